import { glanceChart } from '../charts/glance.ts';
import type { Speaker } from '../language/index.ts';
import type { Tier, WorklistLine } from '../model/clinic.ts';
import type { Block, Cell } from '../model/report.ts';
import { count, heading, word } from './context.ts';
import type { WorklistContent } from './worklist.ts';
import {
  briefReasons,
  hoursText,
  sinceText,
  tierName,
  topicAnd,
  visitText,
  whyText,
  withAgreed,
} from './worklistTexts.ts';

interface Column {
  /** Words of the title, where the usual ones are not enough. */
  title?: string;
  id: 'code' | 'glance' | 'tier' | 'why' | 'hours' | 'since' | 'visit' | 'seenBy' | 'remark';
  width: number;
  cell(line: WorklistLine): Cell;
  /** To sort by. */
  key?(line: WorklistLine, place: number): string | number;
}

/** Without a caption of its own to be seen: a heading with the same words stands above. */
const tableOf = (caption: string, columns: readonly Column[], lines: readonly WorklistLine[], speaker: Speaker) => ({
  kind: 'table' as const,
  caption,
  captionShown: false,
  dense: true,
  columns: columns.map(({ title, id, width }) => ({
    title: title ?? speaker.say(`clinic.columns.${id}`),
    align: id === 'hours' ? ('end' as const) : ('start' as const),
    width,
  })),
  rows: lines.map((line) => columns.map(({ cell }) => cell(line))),
});

const isCompared = (lines: readonly WorklistLine[]): boolean => lines.some(({ outcome }) => outcome.facts?.change);

/** On paper a table for each group that has anyone in it: the groups are the order. Room to write at the end. */
export function tierTable({ lines }: WorklistContent, tier: Tier, speaker: Speaker): Block[] {
  const own = lines.filter((line) => line.tier === tier);
  if (own.length === 0) return [];
  const caption = speaker.say('pages.worklist.caption', { tier: word(tierName(speaker, tier)), n: count(own.length) });
  const columns = onPaper(tier, isCompared(own), speaker);
  return [heading(2, caption), tableOf(caption, columns, own, speaker)];
}

/** No column stands empty for a whole group but those to write in. */
function onPaper(tier: Tier, compared: boolean, speaker: Speaker): Column[] {
  const empty = (): Cell => ({ text: '' });
  const code: Column = { id: 'code', width: 0.15, cell: ({ outcome }) => ({ text: outcome.code, strong: true }) };
  // A table that goes on over the page repeats its titles, and they the group.
  const title = speaker.say('pages.worklist.whyIn', { tier: word(tierName(speaker, tier)) });
  const why: Column = {
    id: 'why',
    title,
    width: 0.27,
    cell: (line) => ({ text: topicAnd(speaker, line, whyText(speaker, line)) }),
  };
  const since: Column = {
    id: 'since',
    width: 0.33,
    cell: (line) => ({ text: withAgreed(speaker, line, sinceText(speaker, line)) }),
  };
  const glance: Column = { id: 'glance', width: 0.2, cell: (line) => glanceCell(speaker, line) };
  const hours: Column = { id: 'hours', width: 0.1, cell: (line) => ({ text: hoursText(speaker, line) }) };
  const visit: Column = { id: 'visit', width: 0.09, cell: (line) => ({ text: visitText(speaker, line) }) };
  const room = (width: number): Column[] => [
    { id: 'seenBy', width: 0.1, cell: empty },
    { id: 'remark', width, cell: empty },
  ];
  if (tier === 'unread') return [code, { ...why, width: 0.47 }, visit, ...room(0.19)];
  if (tier === 'steady')
    return [
      code,
      glance,
      ...(compared ? [{ ...since, width: 0.2 }] : []),
      hours,
      visit,
      ...room(compared ? 0.16 : 0.36),
    ];
  return [code, glance, why, hours, visit, ...room(0.09)];
}

/** On paper for a morning of visits: everyone in the order in which they come. */
export function visitTable({ lines }: WorklistContent, speaker: Speaker): Block[] {
  const caption = speaker.say('pages.worklist.byVisit');
  const empty = (): Cell => ({ text: '' });
  const columns: Column[] = [
    { id: 'visit', width: 0.12, cell: (line) => ({ text: visitText(speaker, line), strong: true }) },
    { id: 'code', width: 0.13, cell: ({ outcome }) => ({ text: outcome.code, strong: true }) },
    { id: 'glance', width: 0.2, cell: (line) => glanceCell(speaker, line) },
    { id: 'tier', width: 0.12, cell: ({ tier }) => ({ text: tierName(speaker, tier) }) },
    { id: 'why', width: 0.26, cell: (line) => ({ text: topicAnd(speaker, line, whyText(speaker, line)) }) },
    { id: 'seenBy', width: 0.08, cell: empty },
    { id: 'remark', width: 0.09, cell: empty },
  ];
  return [heading(2, caption), tableOf(caption, columns, lines, speaker)];
}

/**
 * On a screen one table of everybody, to be sorted as wanted. Code and reasons stand first: a small screen shows them
 * without moving sideways.
 */
export function wholeTable({ lines, order, tiers, linked }: WorklistContent, speaker: Speaker): Block[] {
  const caption = speaker.say(order === 'visit' ? 'pages.worklist.byVisit' : 'pages.worklist.everyone');
  const columns: Column[] = [
    {
      id: 'code',
      width: 0.15,
      cell: ({ outcome }) => ({ text: outcome.code, strong: true, ...(linked ? paperOf(outcome) : {}) }),
      key: ({ outcome }) => outcome.code,
    },
    {
      id: 'why',
      width: 0.27,
      cell: (line) => ({ text: topicAnd(speaker, line, briefReasons(speaker, line.reasons)) }),
      key: (line) => briefReasons(speaker, line.reasons),
    },
    {
      id: 'glance',
      width: 0.18,
      cell: (line) => glanceCell(speaker, line),
      // From the least time in range.
      key: ({ outcome }) => outcome.facts?.shares?.inRange ?? '',
    },
    {
      id: 'tier',
      width: 0.12,
      cell: ({ tier }) => ({ text: tierName(speaker, tier) }),
      // The order of the list itself: by group, the graver first.
      key: ({ tier }, place) => tiers.indexOf(tier) * lines.length + place,
    },
    ...(isCompared(lines)
      ? [
          {
            id: 'since' as const,
            width: 0.16,
            cell: (line: WorklistLine) => ({ text: withAgreed(speaker, line, sinceText(speaker, line)) }),
          },
        ]
      : []),
    {
      id: 'hours',
      width: 0.1,
      cell: (line) => ({ text: hoursText(speaker, line) }),
      key: ({ outcome }) => outcome.facts?.coverage.hours ?? '',
    },
    {
      id: 'visit',
      width: 0.08,
      cell: (line) => ({ text: visitText(speaker, line) }),
      key: ({ outcome }) => (outcome.visit === null ? '' : `${outcome.visit} ${outcome.time ?? '~'}`),
    },
  ];
  return [
    heading(2, caption),
    {
      ...tableOf(caption, columns, lines, speaker),
      keys: lines.map((line, i) => columns.map(({ key, cell }) => key?.(line, i) ?? cell(line).text)),
    },
  ];
}

/** Where the hours went and how the last nights were; nothing of someone who could not be read. */
function glanceCell(speaker: Speaker, { outcome: { facts } }: WorklistLine): Cell {
  if (!facts) return { text: '' };
  const { shares } = facts;
  const bands = shares && {
    'very-low': shares.veryLow,
    low: shares.low,
    'in-range': shares.inRange,
    high: shares.high,
    'very-high': shares.veryHigh ?? 0,
  };
  return { text: '', picture: glanceChart({ shares: bands, nights: facts.nights ?? [] }, { speaker }) };
}

/** The report for the team, as a page where there is one. */
function paperOf({ stem, outputs }: WorklistLine['outcome']): { link?: string } {
  const names = outputs.map(({ name }) => name).filter((name) => name.startsWith(`${stem}-clinic-report.`));
  const name = names.find((one) => one.endsWith('.html')) ?? names[0];
  return name === undefined ? {} : { link: `${stem}/${name}` };
}

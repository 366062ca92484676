import { glanceChart } from '../charts/glance.ts';
import type { Speaker } from '../language/index.ts';
import type { Tier, WorklistLine } from '../model/clinic.ts';
import type { Block, Cell } from '../model/report.ts';
import { count, heading, word } from './context.ts';
import type { WorklistContent } from './worklist.ts';
import {
  briefReasons,
  hoursText,
  lastReadingText,
  pointsText,
  sinceText,
  tierName,
  topicText,
  visitText,
  whyText,
  withAgreed,
  withPoints,
} from './worklistTexts.ts';

/** So many people have a picture each on a screen. */
const PICTURED = 1000;

interface Column {
  /** Words of the title, where the usual ones are not enough. */
  title?: string;
  id: 'order' | 'code' | 'glance' | 'tier' | 'why' | 'hours' | 'since' | 'visit' | 'seenBy' | 'remark';
  width: number;
  cell(line: WorklistLine): Cell;
  /** To sort by. */
  key?(line: WorklistLine): string | number;
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

/** On paper a table for each group that has anyone in it. Room to write at the end. */
export function tierTable({ lines }: WorklistContent, tier: Tier, level: 2 | 3, speaker: Speaker): Block[] {
  const own = lines.filter((line) => line.tier === tier);
  if (own.length === 0) return [];
  const caption = speaker.say('pages.worklist.caption', { tier: word(tierName(speaker, tier)), n: count(own.length) });
  return [heading(level, caption), tableOf(caption, onPaper(tier, own, speaker), own, speaker)];
}

const empty = (): Cell => ({ text: '' });
const room = (seenBy: number, remark: number): Column[] => [
  { id: 'seenBy', width: seenBy, cell: empty },
  { id: 'remark', width: remark, cell: empty },
];

/** The columns that several tables have. No column stands empty for a whole table but those to write in. */
function shared(lines: readonly WorklistLine[], speaker: Speaker) {
  const column = (id: Column['id'], width: number, cell: Column['cell']): Column => ({ id, width, cell });
  const visit = column('visit', 0.08, (line) => ({ text: visitText(speaker, line) }));
  return {
    code: column('code', 0.12, ({ outcome }) => ({ text: outcome.code, strong: true })),
    number: column('order', 0.05, ({ number }) => ({ text: speaker.number(number, 0) })),
    glance: column('glance', 0.17, (line) => glanceCell(speaker, line)),
    why: (width: number, says: (line: WorklistLine) => string = () => ''): Column =>
      column('why', width, (line) => ({
        first: topicText(speaker, line),
        text: [says(line), whyText(speaker, line), pointsText(speaker, line)].filter((text) => text !== '').join('\n'),
      })),
    since: column('since', 0.2, (line) => ({ text: withAgreed(speaker, line, sinceText(speaker, line)) })),
    hours: column('hours', 0.1, (line) => ({ text: hoursText(speaker, line) })),
    visit: lines.some(({ outcome }) => outcome.visit !== null) ? [visit] : [],
  };
}

function onPaper(tier: Tier, lines: readonly WorklistLine[], speaker: Speaker): Column[] {
  const { code, number, glance, why, since, hours, visit } = shared(lines, speaker);
  // A table that goes on over the page repeats its titles, and they the group.
  const title = speaker.say('pages.worklist.whyIn', { tier: word(tierName(speaker, tier)) });
  const left = visit.length > 0 ? 0 : 0.08;
  if (tier === 'unread') return [code, number, { ...why(0.5 + left), title }, ...visit, ...room(0.1, 0.15)];
  if (CALM.includes(tier)) {
    const compared = isCompared(lines) ? [since] : [];
    const remark = (compared.length > 0 ? 0.18 : 0.38) + left;
    return [code, number, glance, ...compared, hours, ...visit, ...room(0.1, remark)];
  }
  return [code, number, glance, { ...why(0.3 + left), title }, hours, ...visit, ...room(0.08, 0.1)];
}

/** Tiers that ask nobody to look. */
const CALM: readonly Tier[] = ['steady', 'quiet'];

const tierOf = (speaker: Speaker) => (line: WorklistLine) => tierName(speaker, line.tier);

/** On paper for the places of the day: who is to be looked at, whatever the group, in order. */
export function firstTable({ lines }: WorklistContent, speaker: Speaker): Block[] {
  if (lines.length === 0) return [];
  const caption = speaker.say('pages.worklist.line.first', { n: count(lines.length) });
  const { code, number, glance, why, visit } = shared(lines, speaker);
  const reasons = why(visit.length > 0 ? 0.4 : 0.48, tierOf(speaker));
  const columns = [code, number, glance, reasons, ...visit, ...room(0.08, 0.1)];
  return [heading(2, caption), tableOf(caption, columns, lines, speaker)];
}

/** On paper for a morning of visits: everyone in the order in which they come. */
export function visitTable({ lines }: WorklistContent, speaker: Speaker): Block[] {
  const caption = speaker.say('pages.worklist.byVisit');
  const { code, number, glance, why } = shared(lines, speaker);
  const visit: Column = {
    id: 'visit',
    width: 0.12,
    cell: (line) => ({ text: visitText(speaker, line), strong: true }),
  };
  const columns = [visit, code, number, glance, why(0.36, tierOf(speaker)), ...room(0.08, 0.1)];
  return [heading(2, caption), tableOf(caption, columns, lines, speaker)];
}

/**
 * On a screen one table of everybody, to be sorted as wanted. Code and reasons stand first: a small screen shows them
 * without moving sideways.
 */
export function wholeTable({ lines, order, tiers, linked }: WorklistContent, speaker: Speaker): Block[] {
  const caption = speaker.say(order === 'visit' ? 'pages.worklist.byVisit' : 'pages.worklist.everyone');
  // Ten thousand drawings make a page that no browser likes; the paper has them.
  const pictured = lines.length <= PICTURED;
  const glance: Column = {
    id: 'glance',
    width: 0.18,
    cell: (line) => glanceCell(speaker, line),
    // From the least time in range.
    key: ({ outcome }) => outcome.facts?.shares?.inRange ?? '',
  };
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
      cell: (line) => ({
        first: topicText(speaker, line),
        text: withPoints(speaker, line, briefReasons(speaker, line.reasons)),
      }),
      key: (line) => topicText(speaker, line),
    },
    ...(pictured ? [glance] : []),
    {
      id: 'tier',
      width: 0.12,
      cell: ({ tier }) => ({ text: tierName(speaker, tier) }),
      // By group, and within it in the order of the list.
      key: ({ tier, number }) => tiers.indexOf(tier) * lines.length + number,
    },
    {
      id: 'order',
      width: 0.05,
      cell: ({ number }) => ({ text: speaker.number(number, 0) }),
      key: ({ number }) => number,
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
      cell: (line) => ({
        text: [hoursText(speaker, line), ...(pictured ? [] : [upTo(speaker, line)])].join('\n').trim(),
      }),
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
      find: findBy(lines, columns, tiers, speaker),
      keys: lines.map((line) => columns.map(({ key, cell }) => key?.(line) ?? cell(line).text)),
    },
  ];
}

/** By group, day of the visit and code. Values stand in the order of the groups, and of the days. */
function findBy(
  lines: readonly WorklistLine[],
  columns: readonly Column[],
  tiers: readonly Tier[],
  speaker: Speaker,
): { column: number; values?: string[]; order?: string[] }[] {
  const at = (id: Column['id']): number => columns.findIndex((column) => column.id === id);
  const day = ({ outcome: { visit } }: WorklistLine): string =>
    visit === null ? '' : speaker.value({ q: 'date', value: visit }, 'compact');
  const names = tiers.map((tier) => tierName(speaker, tier));
  const days = [...new Set(byVisitDay(lines).map(day))];
  return [
    { column: at('tier'), values: lines.map(({ tier }) => tierName(speaker, tier)), order: names },
    ...(days.some((one) => one !== '') ? [{ column: at('visit'), values: lines.map(day), order: days }] : []),
    { column: at('code') },
  ];
}

const byVisitDay = (lines: readonly WorklistLine[]): WorklistLine[] =>
  [...lines].sort((a, b) => {
    const [x, y] = [a.outcome.visit ?? '', b.outcome.visit ?? ''];
    return x < y ? -1 : x > y ? 1 : 0;
  });

/** Up to which reading the files go. */
function upTo(speaker: Speaker, line: WorklistLine): string {
  const last = lastReadingText(speaker, line);
  return last === '' ? '' : speaker.say('pages.worklist.upTo', { last: word(last) });
}

/** Where the hours went and how the last nights were; nothing of someone who could not be read. */
function glanceCell(speaker: Speaker, line: WorklistLine): Cell {
  const { facts } = line.outcome;
  if (!facts) return { text: '' };
  const { shares } = facts;
  const bands = shares && {
    'very-low': shares.veryLow,
    low: shares.low,
    'in-range': shares.inRange,
    high: shares.high,
    'very-high': shares.veryHigh ?? 0,
  };
  return {
    text: upTo(speaker, line),
    picture: glanceChart({ shares: bands, nights: facts.nights ?? [] }, { speaker }),
  };
}

/** The report for the team, as a page where there is one. */
function paperOf({ stem, outputs }: WorklistLine['outcome']): { link?: string } {
  const names = outputs.map(({ name }) => name).filter((name) => name.startsWith(`${stem}-clinic-report.`));
  const name = names.find((one) => one.endsWith('.html')) ?? names[0];
  return name === undefined ? {} : { link: `${stem}/${name}` };
}

import { glanceChart } from '../charts/glance.ts';
import type { Speaker } from '../language/index.ts';
import type { Tier, WorklistLine } from '../model/clinic.ts';
import type { Block, Cell } from '../model/report.ts';
import { count, heading, word } from './context.ts';
import type { WorklistContent } from './worklist.ts';
import {
  hoursText,
  lastReadingText,
  pointsText,
  sinceText,
  tierName,
  topicText,
  visitText,
  whyText,
  withAgreed,
} from './worklistTexts.ts';

export interface Column {
  /** Words of the title, where the usual ones are not enough. */
  title?: string;
  id: 'order' | 'code' | 'glance' | 'tier' | 'why' | 'hours' | 'since' | 'visit' | 'seenBy' | 'remark';
  width: number;
  cell(line: WorklistLine): Cell;
  /** To sort by. */
  key?(line: WorklistLine): string | number;
}

/** Without a caption of its own to be seen: a heading with the same words stands above. */
export const tableOf = (
  caption: string,
  columns: readonly Column[],
  lines: readonly WorklistLine[],
  speaker: Speaker,
) => ({
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

export const isCompared = (lines: readonly WorklistLine[]): boolean =>
  lines.some(({ outcome }) => outcome.facts?.change);

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

/** Up to which reading the files go. */
export function upTo(speaker: Speaker, line: WorklistLine): string {
  const last = lastReadingText(speaker, line);
  return last === '' ? '' : speaker.say('pages.worklist.upTo', { last: word(last) });
}

/** Where the hours went and how the last nights were; nothing of someone who could not be read. */
export function glanceCell(speaker: Speaker, line: WorklistLine): Cell {
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

import type { Speaker } from '../language/index.ts';
import type { Reason, Said, Tier, WorklistLine } from '../model/clinic.ts';
import type { Block, Cell, Page } from '../model/report.ts';
import { count, heading, paragraph, word } from './context.ts';

/** Everything a worklist shows. */
export interface WorklistContent {
  lines: readonly WorklistLine[];
  /** Every tier in its order. */
  tiers: readonly Tier[];
  flagged: number;
  /** Each threshold in force, one sentence each. */
  rules: readonly Said[];
  /** Files of the folder that were not opened. */
  passedOver: readonly string[];
}

/** So many names of files that were not opened are listed. */
const NAMED = 20;

/** Who to look at first and why, with empty columns for those who look. Everybody stands on it exactly once. */
export function worklistPage(content: WorklistContent, say: Speaker, on: 'paper' | 'screen'): Page {
  const { lines, tiers, flagged } = content;
  return {
    id: 'worklist',
    title: say.say('pages.worklist.title'),
    blocks: [
      heading(1, say.say('pages.worklist.title')),
      paragraph(say.say('pages.worklist.lead', { people: count(lines.length), flagged: count(flagged) }), 'lead'),
      paragraph(say.say('pages.worklist.about'), 'small'),
      tierCounts(content, say),
      ...(on === 'screen' ? wholeTable(content, say) : tiers.flatMap((tier) => tierTable(content, tier, say))),
      ...passedOver(content, say),
      heading(2, say.say('pages.worklist.how')),
      {
        kind: 'list',
        ordered: false,
        items: content.rules.map(({ key, params }) => say.say(key, params)),
      },
    ],
  };
}

export const tierName = (say: Speaker, tier: Tier): string => say.say(`clinic.tiers.${tier}`);

/** All reasons in one line. */
export const reasonsText = (say: Speaker, reasons: readonly Reason[]): string =>
  reasons.map(({ key, params }) => say.say(key, params)).join('; ');

export function hoursText(say: Speaker, { outcome: { facts } }: WorklistLine): string {
  if (!facts) return '';
  const whole = (hours: number): string => say.number(hours, 0);
  return say.say('clinic.hoursOf', {
    hours: word(whole(facts.coverage.hours)),
    of: word(whole(facts.coverage.ofHours)),
  });
}

export const visitText = (say: Speaker, { outcome: { visit } }: WorklistLine): string =>
  visit === null ? '' : say.value({ q: 'date', value: visit }, 'compact');

function tierCounts({ lines, tiers }: WorklistContent, say: Speaker): Block {
  return {
    kind: 'table',
    caption: say.say('pages.worklist.tiersCaption'),
    captionShown: false,
    dense: true,
    columns: [
      { title: say.say('pages.worklist.group'), align: 'start', width: 0.8 },
      { title: say.say('pages.worklist.people'), align: 'end', width: 0.2 },
    ],
    rows: tiers.map((tier): Cell[] => {
      const n = lines.filter((line) => line.tier === tier).length;
      return [
        { text: tierName(say, tier), muted: n === 0 },
        { text: say.number(n, 0), muted: n === 0 },
      ];
    }),
  };
}

type ColumnId = 'code' | 'tier' | 'why' | 'hours' | 'visit' | 'seenBy' | 'remark';

const columns = (say: Speaker, widths: [ColumnId, number][]) =>
  widths.map(([id, width]) => ({
    title: say.say(`clinic.columns.${id}`),
    align: id === 'hours' ? ('end' as const) : ('start' as const),
    width,
  }));

/** On paper a table for each group that has anyone in it: the groups are the order. */
function tierTable({ lines }: WorklistContent, tier: Tier, say: Speaker): Block[] {
  const own = lines.filter((line) => line.tier === tier);
  if (own.length === 0) return [];
  const caption = say.say('pages.worklist.caption', { tier: word(tierName(say, tier)), n: count(own.length) });
  return [
    heading(2, caption),
    {
      kind: 'table',
      caption,
      captionShown: false,
      dense: true,
      columns: columns(say, [
        ['code', 0.16],
        ['why', 0.38],
        ['hours', 0.13],
        ['visit', 0.1],
        ['seenBy', 0.11],
        ['remark', 0.12],
      ]),
      rows: own.map((line) => [
        { text: line.outcome.code, strong: true },
        { text: reasonsText(say, line.reasons) },
        { text: hoursText(say, line) },
        { text: visitText(say, line) },
        { text: '' },
        { text: '' },
      ]),
    },
  ];
}

/** On a screen one table of everybody, to be sorted as wanted. */
function wholeTable({ lines, tiers }: WorklistContent, say: Speaker): Block[] {
  const caption = say.say('pages.worklist.everyone');
  return [
    heading(2, caption),
    {
      kind: 'table',
      caption,
      captionShown: false,
      dense: true,
      columns: columns(say, [
        ['code', 0.14],
        ['tier', 0.17],
        ['why', 0.43],
        ['hours', 0.14],
        ['visit', 0.12],
      ]),
      rows: lines.map((line) => [
        { text: line.outcome.code, strong: true },
        { text: tierName(say, line.tier) },
        { text: reasonsText(say, line.reasons) },
        { text: hoursText(say, line) },
        { text: visitText(say, line) },
      ]),
      keys: lines.map((line, i) => [
        line.outcome.code,
        // The order of the list itself: by group, the graver first.
        tiers.indexOf(line.tier) * lines.length + i,
        reasonsText(say, line.reasons),
        line.outcome.facts?.coverage.hours ?? '',
        line.outcome.visit ?? '',
      ]),
    },
  ];
}

function passedOver({ passedOver: names }: WorklistContent, say: Speaker): Block[] {
  if (names.length === 0) return [];
  const rest = names.length - NAMED;
  const items = names.slice(0, NAMED);
  if (rest > 0) items.push(say.say('pages.worklist.andMore', { n: count(rest) }));
  return [heading(2, say.say('pages.worklist.passedOver')), { kind: 'list', items: [...items], ordered: false }];
}

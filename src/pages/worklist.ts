import type { Speaker } from '../language/index.ts';
import type { Said, Tier, WorklistLine } from '../model/clinic.ts';
import type { Block, Cell, Page } from '../model/report.ts';
import { count, denseTable, heading, paragraph } from './context.ts';
import { tierTable, wholeTable } from './worklistTables.ts';
import { tierName } from './worklistTexts.ts';

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
  /** Whether the folders of papers lie beside the worklist, so that a page can lead to them. */
  beside: boolean;
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

function tierCounts({ lines, tiers }: WorklistContent, say: Speaker): Block {
  return denseTable(
    say.say('pages.worklist.tiersCaption'),
    [
      { title: say.say('pages.worklist.group'), align: 'start', width: 0.8 },
      { title: say.say('pages.worklist.people'), align: 'end', width: 0.2 },
    ],
    tiers.map((tier): Cell[] => {
      const n = lines.filter((line) => line.tier === tier).length;
      return [
        { text: tierName(say, tier), muted: n === 0 },
        { text: say.number(n, 0), muted: n === 0 },
      ];
    }),
  );
}

function passedOver({ passedOver: names }: WorklistContent, say: Speaker): Block[] {
  if (names.length === 0) return [];
  const rest = names.length - NAMED;
  const items = names.slice(0, NAMED);
  if (rest > 0) items.push(say.say('pages.worklist.andMore', { n: count(rest) }));
  return [heading(2, say.say('pages.worklist.passedOver')), { kind: 'list', items: [...items], ordered: false }];
}

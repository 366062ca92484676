import type { Speaker } from '../language/index.ts';
import type { Said, Tier, WorklistLine } from '../model/clinic.ts';
import type { Block, Cell, Page } from '../model/report.ts';
import { columnsOf, count, denseTable, heading, paragraph } from './context.ts';
import { tierTable, visitTable, wholeTable } from './worklistTables.ts';
import { tierName } from './worklistTexts.ts';

/** Everything a worklist shows. */
export interface WorklistContent {
  lines: readonly WorklistLine[];
  /** The most pressing first, in groups; or by the time of the visit, everyone in one table. */
  order: 'pressing' | 'visit';
  /** Every tier in its order. */
  tiers: readonly Tier[];
  flagged: number;
  /** Each threshold in force, one sentence each. */
  rules: readonly Said[];
  /** Files of the folder that were not opened. */
  passedOver: readonly string[];
  /** Whether the folders of papers lie beside the worklist, so that a page can lead to them. */
  linked: boolean;
}

/** So many names of files that were not opened are listed. */
const NAMED = 20;

/** Who to look at first and why, with empty columns for those who look. Everybody stands on it exactly once. */
export function worklistPage(content: WorklistContent, speaker: Speaker, on: 'paper' | 'screen'): Page {
  const { lines, flagged } = content;
  return {
    id: 'worklist',
    title: speaker.say('pages.worklist.title'),
    blocks: [
      heading(1, speaker.say('pages.worklist.title')),
      paragraph(speaker.say('pages.worklist.lead', { people: count(lines.length), flagged: count(flagged) }), 'lead'),
      paragraph(speaker.say('pages.worklist.about'), 'small'),
      paragraph(speaker.say('pages.worklist.pictures'), 'small'),
      tierCounts(content, speaker),
      ...tables(content, speaker, on),
      ...passedOver(content, speaker),
      heading(2, speaker.say('pages.worklist.how')),
      {
        kind: 'list',
        ordered: false,
        items: content.rules.map(speaker.repeat),
      },
    ],
  };
}

function tables(content: WorklistContent, speaker: Speaker, on: 'paper' | 'screen'): Block[] {
  if (on === 'screen') return wholeTable(content, speaker);
  if (content.order === 'visit') return visitTable(content, speaker);
  return content.tiers.flatMap((tier) => tierTable(content, tier, speaker));
}

function tierCounts({ lines, tiers }: WorklistContent, speaker: Speaker): Block {
  return denseTable(
    speaker.say('pages.worklist.tiersCaption'),
    columnsOf((name: 'group' | 'people') => speaker.say(`pages.worklist.${name}`), ['group', 0.8], ['people', 0.2]),
    tiers.map((tier): Cell[] => {
      const n = lines.filter((line) => line.tier === tier).length;
      return [
        { text: tierName(speaker, tier), muted: n === 0 },
        { text: speaker.number(n, 0), muted: n === 0 },
      ];
    }),
  );
}

function passedOver({ passedOver: names }: WorklistContent, speaker: Speaker): Block[] {
  if (names.length === 0) return [];
  const rest = names.length - NAMED;
  const items = names.slice(0, NAMED);
  if (rest > 0) items.push(speaker.say('pages.worklist.andMore', { n: count(rest) }));
  return [heading(2, speaker.say('pages.worklist.passedOver')), { kind: 'list', items: [...items], ordered: false }];
}

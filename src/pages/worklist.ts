import type { Speaker } from '../language/index.ts';
import type { Said, Tier, WorklistLine } from '../model/clinic.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Block, Cell, Page } from '../model/report.ts';
import { columnsOf, count, denseTable, heading, paragraph, word } from './context.ts';
import { theLine } from './worklistLine.ts';
import { wholeTable } from './worklistScreen.ts';
import { firstTable, tierTable, visitTable } from './worklistTables.ts';
import { foundText, lastReadingText, tierName } from './worklistTexts.ts';

/** Everything a worklist shows. */
export interface WorklistContent {
  lines: readonly WorklistLine[];
  /** The most pressing first, in groups; or by the time of the visit, everyone in one table. */
  order: 'pressing' | 'visit';
  /** Every tier in its order. */
  tiers: readonly Tier[];
  flagged: number;
  /** Each threshold in force, one sentence each; and how people of any group are put into one order. */
  rules: readonly Said[];
  orderRules: readonly Said[];
  /** Where the day is full, and who of those to be looked at stands below; null where nobody said how many it has room for. */
  line: {
    places: number;
    first: number;
    below: number;
    lows: number;
    unread: number;
    next: readonly WorklistLine[];
  } | null;
  /** Files of the folder that were not opened. */
  passedOver: readonly string[];
  /** Folders of papers that lie with these and that an earlier run made for people who are not in this one. */
  former: readonly string[];
  /** Whether the folders of papers lie beside the worklist, so that a page can lead to them. */
  linked: boolean;
}

/** So many names of files that were not opened, or of folders of earlier runs, are listed. */
const NAMED = 20;

/** Who to look at first and why, with empty columns for those who look. Everybody stands on it exactly once. */
export function worklistPage(
  content: WorklistContent,
  speaker: Speaker,
  on: 'paper' | 'screen',
  when: { printed: LocalDate; time: string | null },
): Page {
  const { lines, flagged } = content;
  return {
    id: 'worklist',
    title: speaker.say('pages.worklist.title'),
    blocks: [
      heading(1, speaker.say('pages.worklist.title')),
      paragraph(speaker.say('pages.worklist.lead', { people: count(lines.length), flagged: count(flagged) }), 'lead'),
      paragraph(whenText(content, speaker, when), 'small'),
      ...theLine(content, speaker),
      ...whoWasFound(content, speaker),
      ...formerPeople(content, speaker),
      paragraph(speaker.say('pages.worklist.about'), 'small'),
      paragraph(speaker.say('pages.worklist.pictures'), 'small'),
      tierCounts(content, speaker),
      ...tables(content, speaker, on),
      ...passedOver(content, speaker),
      heading(2, speaker.say('pages.worklist.how')),
      {
        kind: 'list',
        ordered: false,
        items: [...content.rules, ...content.orderRules].map(speaker.repeat),
      },
    ],
  };
}

function tables(content: WorklistContent, speaker: Speaker, on: 'paper' | 'screen'): Block[] {
  if (on === 'screen') return wholeTable(content, speaker);
  if (content.order === 'visit') return visitTable(content, speaker);
  if (content.line === null) return content.tiers.flatMap((tier) => tierTable(content, tier, 2, speaker));
  const { first } = content.line;
  const rest = { ...content, lines: content.lines.slice(first) };
  return [
    ...firstTable({ ...content, lines: content.lines.slice(0, first) }, speaker),
    ...(rest.lines.length > 0 ? [heading(2, speaker.say('pages.worklist.line.rest'))] : []),
    ...rest.tiers.flatMap((tier) => tierTable(rest, tier, 3, speaker)),
  ];
}

/** When the list was made, and that what came later is not in it. */
function whenText(
  { lines }: WorklistContent,
  speaker: Speaker,
  when: { printed: LocalDate; time: string | null },
): string {
  const last = lines.reduce<WorklistLine | null>((latest, line) => (at(line) > at(latest) ? line : latest), null);
  return speaker.say('pages.worklist.when', {
    date: { q: 'date', value: when.printed },
    time: word(when.time ?? 'none'),
    last: word(last === null || at(last) === '' ? 'none' : lastReadingText(speaker, last)),
  });
}

function at(line: WorklistLine | null): string {
  const last = line?.outcome.facts?.lastReading;
  return last ? `${last.date} ${String(last.minute).padStart(4, '0')}` : '';
}

/** By which rules files became people, and how many by each. */
function whoWasFound({ lines }: WorklistContent, speaker: Speaker): Block[] {
  const found = foundText(
    speaker,
    lines.map(({ outcome }) => outcome.by),
  );
  return found === '' ? [] : [paragraph(found, 'small')];
}

function formerPeople({ former }: WorklistContent, speaker: Speaker): Block[] {
  if (former.length === 0) return [];
  const names = someOf(former, speaker).join(', ');
  return [paragraph(speaker.say('pages.worklist.former', { n: count(former.length), names: word(names) }), 'small')];
}

/** The first names, and how many more there are. */
function someOf(names: readonly string[], speaker: Speaker): string[] {
  const rest = names.length - NAMED;
  return [...names.slice(0, NAMED), ...(rest > 0 ? [speaker.say('pages.worklist.andMore', { n: count(rest) })] : [])];
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
  const items = someOf(names, speaker);
  return [heading(2, speaker.say('pages.worklist.passedOver')), { kind: 'list', items, ordered: false }];
}

import type { Analysis } from '../analyse.ts';
import type { ChartContext } from '../charts/context.ts';
import { count, word } from '../findings/evidence/quantities.ts';
import type { FindingId } from '../findings/index.ts';
import type { Speaker } from '../language/index.ts';
import type { Episode } from '../model/episodes.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Evidence, Look } from '../model/look.ts';
import type { Params } from '../model/quantity.ts';
import type { Block, Cell, Page } from '../model/report.ts';
import type { Agreed } from '../model/visits.ts';
import type { Below, FindingParams, ParamsOf, WordKey } from '../model/words.ts';
import type { Topic } from '../topics/index.ts';

/** What every page is filled from. */
export interface PageContext {
  analysis: Analysis;
  speaker: Speaker;
  chart: ChartContext;
  /** What was typed in at this visit; null where nothing was. Hostile text. */
  written: Agreed | null;
}

/** Fills one page, or null when there is nothing to say on it. */
export type PageMaker = (context: PageContext) => Page | null;

type Holds<P> = Extract<Look<P>, { case: 'holds' }>;

/** Every low of the period; none where they cannot be told. */
export const lowsOf = ({ lows }: Analysis['measures']): readonly Episode[] => (lows.ok ? lows.value.list : []);

/** What a finding saw, when it holds. */
export function held<Id extends FindingId>({ analysis }: PageContext, id: Id): Holds<FindingParams<Id>> | null {
  const look = analysis.found.find((one) => one.id === id)?.look;
  // Each finding was seen to give what its words ask for where it is written (findings/finding.ts).
  return look?.case === 'holds' ? (look as Holds<FindingParams<Id>>) : null;
}

/** One part of a finding's words, or null when the finding does not hold or has no such words in this voice. */
export function findingText(context: PageContext, id: FindingId, part: 'what' | 'why' | 'ask'): string | null {
  const { speaker } = context;
  const look = held(context, id);
  const text = look && speaker.sayIfKnown(`findings.${id}.${speaker.voice}.${part}`, look.params);
  if (text === null || part !== 'what' || look?.also === undefined) return text;
  return `${text} ${speaker.say(`pages.alsoDiffers.${speaker.voice}`, look.also)}`;
}

/** The name of a finding that holds, as a heading or in a sentence. */
export function nameOf(
  { speaker }: PageContext,
  id: FindingId,
  part: 'name' | 'topic',
  { params }: Holds<Params>,
): string {
  const key: WordKey = `findings.${id}.${part}`;
  return speaker.repeat({ key, params });
}

/** What the visit could be about, first things first, each by its name in a sentence. */
export function heldTopics(context: PageContext): { id: FindingId; rule: Topic['rule']; name: string }[] {
  return context.analysis.topics.flatMap(({ id, rule }) => {
    const look = held(context, id);
    return look ? [{ id, rule, name: nameOf(context, id, 'topic', look) }] : [];
  });
}

/** All sentences of `ids` that hold, in that order. */
export function tellAll(
  context: PageContext,
  ids: readonly FindingId[],
  part: 'what' | 'why' | 'ask' = 'what',
): string[] {
  return ids.flatMap((id) => findingText(context, id, part) ?? []);
}

export { count, word };

/** Answers of a person that go against what the readings show, each a sentence on page 1 of both papers. */
export function onTheirWord({ analysis, speaker }: PageContext): string[] {
  const has = (wanted: string): boolean => analysis.issues.some(({ code }) => code === wanted);
  const key = speaker.voice === 'clinic' ? 'pages.overview.data' : 'pages.patientFront';
  return [
    ...(has('series-confirmed') ? [speaker.say(`${key}.confirmed`)] : []),
    ...(has('unit-contradicts-user') ? [speaker.say(`${key}.unitSaid`)] : []),
  ];
}

/** So many files that could not be read are named. */
const NAMED = 4;

/** Files that could not be read, the first few by name. */
export const missingParams = (files: readonly string[]) => ({
  count: count(files.length),
  files: word(`${files.slice(0, NAMED).join(', ')}${files.length > NAMED ? ' …' : ''}`),
});

export const paragraph = (text: string, style: 'lead' | 'body' | 'strong' | 'small' = 'body'): Block => ({
  kind: 'paragraph',
  text,
  style,
});
export const heading = (level: 1 | 2 | 3, text: string): Block => ({ kind: 'heading', level, text });
export const space = (points: number): Block => ({ kind: 'space', points });

export function caution({ speaker }: PageContext, id: Below<'cautions'>, boxed = false): Block {
  return { kind: 'caution', id, text: speaker.say(`cautions.${id}`), boxed };
}

type Table = Extract<Block, { kind: 'table' }>;

/** Columns by their names and shares of the width: the first one and those of words stand at the left, numbers at the right. */
export const columnsOf = <Name extends string>(
  title: (name: Name) => string,
  ...columns: readonly (readonly [name: Name, width: number, words?: 'words'])[]
): Table['columns'] =>
  columns.map(([name, width, words], i) => ({
    title: title(name),
    align: i === 0 || words !== undefined ? 'start' : 'end',
    width,
  }));

/** A table in small print under a heading that says what it holds, so that its caption is for readers by ear only. */
export const denseTable = (caption: string, columns: Table['columns'], rows: Cell[][]): Block => ({
  kind: 'table',
  caption,
  captionShown: false,
  dense: true,
  columns,
  rows,
});

/** The days behind a statement, each once, as short dates in which no line ends. */
export function evidenceDays({ speaker }: PageContext, where: Evidence[]): string {
  const days = [...new Set(where.map((one) => one.date))].sort() as LocalDate[];
  return days.map((date) => speaker.value({ q: 'date', value: date }, 'compact').replaceAll(' ', '\u00a0')).join(', ');
}

/** The first day of a period says its year only where it is not that of the last. */
export const yearOf = (from: LocalDate, to: LocalDate): 'plain' | 'dated' =>
  from.slice(0, 4) === to.slice(0, 4) ? 'plain' : 'dated';

/** Parts of a line with a dot between them, which stays with what stands before it: no line begins with one. */
export const dotted = (parts: readonly string[]): string => parts.join('\u00a0· ');

/** `14 days, March 2 to March 15, 2026`, as parameters of a message. */
export function periodParams({ analysis, speaker }: PageContext): ParamsOf<'pages.overview.title'> {
  const { timeline } = analysis;
  return {
    days: count(timeline.days.length),
    from: word(speaker.value({ q: 'date', value: timeline.from }, yearOf(timeline.from, timeline.to))),
    to: word(speaker.value({ q: 'date', value: timeline.to }, 'dated')),
  };
}

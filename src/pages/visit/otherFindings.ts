import type { FindingId } from '../../findings/index.ts';
import type { Block } from '../../model/report.ts';
import { storyOf } from '../../topics/index.ts';
import { count, held, nameOf, type PageContext, paragraph, word } from '../context.ts';
import { CLOCK_FINDINGS } from '../usualDay.ts';
import { isThin } from './layout.ts';
import { lowsSaid } from './lowsFirst.ts';

/** Sentences of the usual day, and of what went well, that the sheets have room for. */
export const MOST_LINES = 3;
const WELL: readonly FindingId[] = ['best-window', 'best-days', 'steady-nights'];
const MOST_WELL = 2;
/** Told in the line on data, and by the rows and the line of lows and highs. */
const IN_LINES: readonly FindingId[] = [
  'not-enough-data',
  'nights-without-data',
  'readings-at-limits',
  'standing-still',
  'lows-seen',
];
/** Told by the table of bands and goals, and that of numbers. */
const IN_TABLES: readonly FindingId[] = ['time-in-range', 'time-low-over-goal', 'cv-over-limit'];
const CHANGES: readonly FindingId[] = ['changed-lows', 'changed-range', 'change-not-told'];

/** That nothing is told apart goes without saying where the measure of what was agreed has just been told with its verdict. */
export function changesSaid({ analysis }: PageContext): readonly FindingId[] {
  const { lastTime } = analysis.measures;
  const measured = lastTime.ok && lastTime.value.measure !== null;
  return measured ? CHANGES.filter((id) => id !== 'change-not-told') : CHANGES;
}

const holding = (context: PageContext, ids: readonly FindingId[]): FindingId[] =>
  ids.filter((id) => held(context, id) !== null);

/** What the usual day says of the clock. */
export const clockSaid = (context: PageContext): FindingId[] =>
  holding(
    context,
    CLOCK_FINDINGS.filter((id) => !WELL.includes(id) && !firstSide(context).includes(id)),
  ).slice(0, MOST_LINES);

export const wellSaid = (context: PageContext): FindingId[] => holding(context, WELL).slice(0, MOST_WELL);

function firstSide(context: PageContext): FindingId[] {
  const { found, topics } = context.analysis;
  const story = storyOf(found, topics);
  return [...lowsSaid(context), ...IN_LINES, ...IN_TABLES, ...topics.map(({ id }) => id), ...(story ? [story] : [])];
}

/** Every other finding that holds, by name and with its page: none is absent in silence. All else on the page gives way before. Then where the method is. */
export function otherFindings(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const thin = isThin(context);
  const second = thin ? [] : [...clockSaid(context), ...holding(context, changesSaid(context))];
  const last = wellSaid(context);
  const printed = [...firstSide(context), ...second, ...last];
  const rest = analysis.found.flatMap(({ id, look }) => (look.case === 'holds' && !printed.includes(id) ? [id] : []));
  const names = (ids: readonly FindingId[]) =>
    word(ids.map((id) => nameOf(context, id, 'name', held(context, id)!)).join('; '));
  const on = (page: number, ids: readonly FindingId[]): string[] =>
    ids.length === 0 ? [] : [speaker.say('pages.visit.onPage', { page: count(page), names: names(ids) })];
  const further = rest.length === 0 ? [] : [speaker.say('pages.visit.onFurther', { names: names(rest) })];
  const lines = [...on(2, second), ...on(thin ? 2 : 4, last), ...further];
  const also = lines.length === 0 ? [] : [speaker.say('pages.visit.also'), ...lines];
  return [paragraph([...also, speaker.say('pages.visit.method')].join(' '), 'small')];
}

import type { Drawing, Mark } from '../model/drawing.ts';
import type { Night } from '../model/measures.ts';
import type { Band } from '../model/targets.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH, NARROW_WIDTH } from './frame.ts';
import { round } from './pen.ts';

const FILL: Record<Night['state'], Band | 'paper'> = {
  'very-low': 'very-low',
  low: 'low',
  'none-seen': 'paper',
  unknown: 'paper',
};

/** A fortnight in one row with room to spare; up to four weeks in one row of narrow boxes; a week where text is large. */
const MOST_A_ROW = 28;
const LARGE = { text: 14, perRow: 7 };
/** On a narrow screen a week is a row, of large text half of one. */
const NARROW = { perRow: 7, large: 4 };

/** One box a night. A night without enough readings is a dotted box with a question mark, never an empty calm one. */
export function nightsChart(nights: Night[], context: ChartContext): Drawing {
  const { text } = context;
  const { width: whole = CONTENT_WIDTH } = context;
  const narrow = whole < CONTENT_WIDTH;
  const large = text > LARGE.text;
  const perRow = narrow ? NARROW[large ? 'large' : 'perRow'] : large ? LARGE.perRow : rowOf(nights.length, text);
  const rows = Math.ceil(nights.length / perRow);
  const gap = perRow > 14 ? 1.5 : 3;
  const width = (whole - gap * (perRow - 1)) / perRow;
  const box = perRow > 14 ? text * 1.9 : Math.max(text * 2.7, 24);
  const head = headOf(context, width);
  const rowHeight = head + 4 + box + 8;
  const withMinutes = minutesFit(nights, width, context);
  const marks: Mark[] = nights.flatMap((night, index) => {
    const x = round((index % perRow) * (width + gap));
    const y = round(Math.floor(index / perRow) * rowHeight);
    return oneNight(night, { x, y, w: round(width), h: box, head }, withMinutes, context);
  });
  return {
    width: whole,
    height: round(rows * rowHeight - 6),
    how: 'nights',
    get narrow() {
      return narrow ? undefined : nightsChart(nights, { ...context, width: NARROW_WIDTH });
    },
    summary: nightsSummary(nights, context),
    get table() {
      return nightsTable(nights, context);
    },
    marks,
  };
}

/** What is to be seen, with its numbers. */
export function nightsSummary(nights: readonly Night[], { speaker }: ChartContext): string {
  const count = (state: Night['state']) => ({
    q: 'count' as const,
    value: nights.filter((night) => night.state === state).length,
  });
  return speaker.say('charts.nights.summary', {
    nights: { q: 'count', value: nights.length },
    veryLow: count('very-low'),
    low: count('low'),
    none: count('none-seen'),
    unknown: count('unknown'),
  });
}

export function nightsTable(nights: readonly Night[], { speaker }: ChartContext) {
  return {
    columns: [
      speaker.say('charts.words.night'),
      speaker.say('charts.nights.state'),
      speaker.say('charts.words.lowest'),
      speaker.say('charts.words.covered'),
    ],
    rows: nights.map((night) => [
      speaker.value({ q: 'date', value: night.date }, 'short'),
      speaker.say(`charts.nights.states.${night.state}`),
      night.lowest === null ? '–' : speaker.value({ q: 'glucose', value: night.lowest, limit: night.lowestLimit }),
      speaker.value({ q: 'share', value: night.share }),
    ]),
  };
}

/** Nights a row: more than a fortnight only where three digits still fit their narrow boxes. */
function rowOf(nights: number, text: number): number {
  const most = Math.min(MOST_A_ROW, nights);
  if (most <= 14) return 14;
  return roughWidth('188', text) <= (CONTENT_WIDTH - 1.5 * (most - 1)) / most ? most : 14;
}

/** Height of the band above the words of a low night: enough for a hatch to be known by. */
const lintelOf = (text: number): number => round(Math.max(5, text * 0.45));

/** Minutes stand in every low box or in none: beside a box without them, a box with them looks like the only low. */
function minutesFit(nights: Night[], width: number, context: ChartContext): boolean {
  return nights.every(
    (night) =>
      (night.state !== 'low' && night.state !== 'very-low') ||
      roughWidth(minutesIn(night, context), smallOf(context)) <= width + 1,
  );
}

/** Nothing on the paper for a person is smaller than its smallest text. */
const smallOf = ({ speaker, text }: ChartContext): number => (speaker.voice === 'patient' ? text : text - 1);

const minutesIn = ({ lowMinutes }: Night, { speaker }: ChartContext): string =>
  speaker.say('charts.nights.minutes', { minutes: { q: 'count', value: lowMinutes } });

function oneNight(
  night: Night,
  at: { x: number; y: number; w: number; h: number; head: number },
  minutesTold: boolean,
  context: ChartContext,
): Mark[] {
  const { speaker, text } = context;
  const fill = FILL[night.state];
  const top = at.y + at.head + 4;
  const centre = round(at.x + at.w / 2);
  // Only the darkest box carries words on its fill; on the other, and on its hatch, they would be hard to read.
  const low = fill === 'low';
  const on = fill === 'very-low' ? { on: fill } : {};
  const day = speaker.value({ q: 'date', value: night.date }, 'day');
  const weekday = speaker.value({ q: 'date', value: night.date }, 'weekday');
  const wide = `${weekday} ${day}`;
  const oneLine = roughWidth(wide, text) * 1.1 <= at.w;
  const first = night.state === 'unknown' ? '?' : lowestIn(night, at.w, context);
  const { state } = night;
  const calm = state === 'unknown' || state === 'none-seen';
  const second = calm ? speaker.say(`charts.nights.short.${state}`) : minutesIn(night, context);
  const small = smallOf(context);
  const size = at.w < 24 ? text : text + 1;
  const two = calm ? roughWidth(second, small) <= at.w + 1 : minutesTold;
  const head = top + (low ? lintelOf(text) : 0);
  const room = top + at.h - head;
  const marks: Mark[] = [
    ...(at.head > text
      ? [title(weekday, centre, at.y + text, text), title(day, centre, at.y + at.head, text)]
      : [title(oneLine ? wide : day, centre, at.y + text, text)]),
    {
      kind: 'rect',
      role: low ? 'paper' : fill,
      x: at.x,
      y: round(top),
      w: at.w,
      h: at.h,
      outline: night.state === 'unknown' ? 'axis' : 'ink',
      outlineWidth: low ? 1.25 : 0.75,
      dotted: night.state === 'unknown',
      radius: 2,
    },
    ...(low ? [lintel(at, round(top), lintelOf(text))] : []),
    {
      kind: 'text',
      role: 'ink',
      x: centre,
      y: round(head + (two ? room * 0.46 : room / 2 + size * 0.36)),
      text: first,
      size,
      anchor: 'middle',
      strong: true,
      ...on,
    },
  ];
  if (two)
    marks.push({
      kind: 'text',
      role: 'ink',
      x: centre,
      y: round(head + room * 0.86),
      text: second,
      size: small,
      anchor: 'middle',
      ...on,
    });
  return marks;
}

const title = (words: string, x: number, y: number, size: number): Mark => ({
  kind: 'text',
  role: 'axis',
  x,
  y: round(y),
  text: words,
  size,
  anchor: 'middle',
});

/** On the paper for a person every night has its weekday: over the day where a box is too narrow for both. */
function headOf({ speaker, text }: ChartContext, width: number): number {
  const wide = roughWidth('Wed 28', text) * 1.1 > width;
  return speaker.voice === 'patient' && wide && roughWidth('Wed', text) <= width ? text * 2 + 1 : text;
}

/** The lowest reading; one at the sensor's limit as a bound, in a narrow box without its space. */
function lowestIn({ lowest, lowestLimit }: Night, width: number, { speaker, text }: ChartContext): string {
  if (lowest === null) return '–';
  const value = speaker.value({ q: 'glucose', value: lowest }, 'short');
  if (lowestLimit === 0) return value;
  const bound = speaker.say(lowestLimit < 0 ? 'units.under' : 'units.over', { value: { q: 'word', value } });
  return roughWidth(bound, text + 1) <= width ? bound : bound.replace(/\s/u, '');
}

const lintel = ({ x, w }: { x: number; w: number }, y: number, h: number): Mark => ({
  kind: 'rect',
  role: 'low',
  x,
  y,
  w,
  h,
  outline: 'ink',
  outlineWidth: 0.75,
});

import type { Drawing, Mark } from '../model/drawing.ts';
import type { Episode } from '../model/episodes.ts';
import type { DailySummary } from '../model/measures.ts';
import type { Day, Timeline } from '../model/timeline.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { dayAlong } from './along.ts';
import { clockAxis, clockGrid, clockScale, glucoseAxis, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { type Curve, filledBeyond, heightOf, piecesOf } from './curve.ts';
import { dateWidth, facts, sentence } from './dayFacts.ts';
import { dayHours } from './dayHours.ts';
import { dayInWords } from './dayInWords.ts';
import { drawnNotes } from './drawnNotes.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { noteSigns, signsHeight } from './noteSigns.ts';
import { round } from './pen.ts';

/** One day across the full width: the curve on the axis all charts share, parts beyond range filled, notes under it. */
export function dayStripChart(
  timeline: Timeline,
  summary: DailySummary,
  index: number,
  context: ChartContext,
  options: {
    height: number;
    clock: boolean;
    lanes: number;
    lows: readonly Episode[];
    /** No strip among others, as wide as the chart may be: what stands at the left of a strip is said elsewhere. */
    alone?: boolean;
    /** Minutes of the clock between which nothing is read off; absent: an hour. */
    step?: number;
  },
): Drawing {
  const { speaker, text, width = CONTENT_WIDTH } = context;
  const { alone = false } = options;
  const day = timeline.days[index]!;
  const left = (alone ? 0 : dateWidth(context)) + text * 2.7;
  const plot: Plot = { left, top: 2, width: width - left - 2, height: options.height };
  const notes = drawnNotes(timeline).filter((note) => note.day === index);
  const x = clockScale(plot);
  const curve = curveOf(timeline, day, plot);
  const foot = plot.top + plot.height;
  const head = `${speaker.value({ q: 'date', value: day.date }, 'weekday')} ${speaker.value({ q: 'date', value: day.date }, 'compact')}`;
  const marks: Mark[] = [
    ...(alone ? [] : [headMark(head, plot, day), ...facts(summary, plot.top + 11, context)]),
    clockGrid(plot, 3),
    ...filledBeyond(curve, plot, context),
    ...glucoseAxis(plot, context),
    ...trace(timeline, day, curve, plot),
    ...limitMarks(timeline, day, plot),
    { kind: 'line', role: 'axis', lines: [[plot.left, foot, plot.left + plot.width, foot]], width: 0.75 },
    ...noteSigns(notes, x, foot + 4, { left: plot.left, right: plot.left + plot.width, lanes: options.lanes }, context),
  ];
  let height = foot + 5 + signsHeight(options.lanes);
  if (options.clock) {
    marks.push(...clockAxis({ ...plot, height: plot.height + signsHeight(options.lanes) + 4 }, context));
    height += text + 6;
  }
  return {
    width,
    height: round(height),
    how: 'day',
    summary: sentence(summary, notes.length, context),
    get inWords() {
      return dayInWords(timeline, summary, index, options.lows, context);
    },
    get table() {
      return dayHours(timeline, index, context);
    },
    get along() {
      return dayAlong(timeline, index, plot, head, context, options.step);
    },
    ...(alone ? {} : { date: day.date, day: onClock(head, plot, context) }),
    marks,
  };
}

const headMark = (text: string, { top }: Plot, { date }: Day): Mark => ({
  ...{ kind: 'text', role: 'ink', x: 0, y: round(top + 11), size: 10.5, anchor: 'start', strong: true },
  ...{ text, date },
});

const onClock = (name: string, { left, width }: Plot, { speaker }: ChartContext): NonNullable<Drawing['day']> => ({
  name,
  left: round(left),
  right: round(left + width),
  hours: [0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) => speaker.value({ q: 'clock', value: hour * 60 }, 'short')),
});

type DayRange = { from: number; to: number };

/** A clock set back at night would draw the curve backwards: the second pass starts a line of its own. */
export function curveOf(timeline: Timeline, day: DayRange, plot: Plot): Curve {
  const { at, minute } = timeline.readings;
  const x = clockScale(plot);
  const longest = timeline.gapMinutes * MINUTE_MS;
  const count = Math.max(0, day.to - day.from);
  const curve: Curve = { x: new Array(count), mgdl: new Array(count), anew: new Array(count) };
  for (let i = day.from, k = 0, last = plot.left; i < day.to; i++, k++) {
    curve.x[k] = round(x(minute[i]!));
    curve.mgdl[k] = heightOf(timeline, i);
    curve.anew[k] = i === day.from || at[i]! - at[i - 1]! > longest || curve.x[k]! < last;
    last = curve.x[k]!;
  }
  return curve;
}

/** The curve in ink; a pause longer than the gap rule leaves a dotted bracket on the foot of the plot. */
export function trace(
  timeline: Timeline,
  day: DayRange & { start: number; minutes: number },
  curve: Curve,
  plot: Plot,
): Mark[] {
  const { at } = timeline.readings;
  const longest = timeline.gapMinutes * MINUTE_MS;
  const foot = round(plot.top + plot.height - 1.5);
  const holes: number[][] = [];
  let lastX = plot.left;
  let lastAt = day.start;
  const look = (x: number, here: number): void => {
    if (here - lastAt > longest && x > lastX) holes.push([lastX, foot, x, foot]);
    lastX = x;
    lastAt = here;
  };
  curve.x.forEach((x, k) => {
    look(x, at[day.from + k]!);
  });
  look(round(plot.left + plot.width), day.start + day.minutes * MINUTE_MS);
  return [
    { kind: 'line', role: 'gap', lines: holes, width: 1.5, dash: [1.5, 2] },
    { kind: 'line', role: 'trace', lines: piecesOf(curve, plot), width: 1.1 },
  ];
}

/** Readings at the sensor's own limits end in a small bar on the edge of the axis, so they are not taken for a value. */
export function limitMarks(timeline: Timeline, day: DayRange, plot: Plot): Mark[] {
  const { limit, minute } = timeline.readings;
  const x = clockScale(plot);
  const lines: number[][] = [];
  for (let i = day.from; i < day.to; i += 1) {
    if (limit[i] === 0) continue;
    const edge = round(limit[i]! < 0 ? plot.top + plot.height : plot.top);
    const px = round(x(minute[i]!));
    lines.push([px, edge - 2, px, edge + 2]);
  }
  return lines.length === 0 ? [] : [{ kind: 'line', role: 'ink', lines, width: 0.75 }];
}

import type { Drawing, Mark } from '../model/drawing.ts';
import type { Episode } from '../model/episodes.ts';
import type { DailySummary } from '../model/measures.ts';
import type { Day, Timeline } from '../model/timeline.ts';
import { toMgPerDl } from '../units.ts';
import { rangeLines } from './aligned.ts';
import { dayAlong } from './along.ts';
import { clockGrid, clockScale, glucoseAxis, glucoseScale, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { filledBeyond } from './curve.ts';
import { sentence } from './dayFacts.ts';
import { dayHours } from './dayHours.ts';
import { dayInWords } from './dayInWords.ts';
import { curveOf, limitMarks, trace } from './dayStrip.ts';
import { notesOfDay } from './drawnNotes.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { hourLabels } from './hourLabels.ts';
import { type LongActing, lanesHeight, noteLanes, signKind } from './noteLanes.ts';
import { round } from './pen.ts';

/** Between panels that stand side by side, as the writers set columns. */
const GUTTER = 18;
/** Two days side by side, with room for the date and the axis at the left of each. */
const PANEL = { width: (CONTENT_WIDTH - GUTTER) / 2, text: 7.5, left: 52 };
/** One day across the page. */
const WHOLE = CONTENT_WIDTH;
/** On a narrow screen it is as wide as half a page, and no higher than this. */
const NARROW_HEIGHT = 110;
/** Four days side by side, without notes. */
const SMALL = { width: (CONTENT_WIDTH - 3 * GUTTER) / 4, text: 7.5 };

/** Above a plot, and between it and the signs. */
const TOP = 1;
const AIR = 2;
const panelHeight = (plot: number, clock: boolean): number => TOP + plot + AIR + lanesHeight + (clock ? 11 : 0);

interface Options {
  /** Of the plot alone, in points. */
  height: number;
  clock: boolean;
  /** Across the page, not half of it. */
  wide?: boolean;
  isLong: LongActing;
  /** Of the whole period. */
  lows: readonly Episode[];
}

/** One day, half a page wide or a whole one: its curve on the axis all charts share, and under it what was noted, with amounts. */
export function dayPanelChart(
  timeline: Timeline,
  summary: DailySummary,
  index: number,
  given: ChartContext,
  options: Options,
): Drawing {
  const { height, clock, wide = false, isLong, lows } = options;
  const context = { ...given, text: PANEL.text };
  const { text } = context;
  const day = timeline.days[index]!;
  const width = wide ? WHOLE : PANEL.width;
  const plot: Plot = { left: PANEL.left, top: TOP, width: width - PANEL.left - 2, height };
  const x = clockScale(plot);
  const foot = round(plot.top + height);
  const notes = notesOfDay(timeline, index);
  const right = plot.left + plot.width;
  const clockY = foot + AIR + lanesHeight + text + 1;
  return {
    width: round(width),
    height: round(panelHeight(height, clock)),
    get narrow() {
      const half = { ...options, wide: false, height: Math.min(height, NARROW_HEIGHT) };
      return wide ? dayPanelChart(timeline, summary, index, given, half) : undefined;
    },
    how: 'day',
    get summary() {
      return sentence(summary, notes.length, context);
    },
    get inWords() {
      return dayInWords(timeline, summary, index, lows, context);
    },
    get table() {
      return dayHours(timeline, index, context);
    },
    get along() {
      return dayAlong(timeline, index, plot, nameOf(day, context), context);
    },
    date: day.date,
    get marks(): Mark[] {
      return [
        ...dateMarks(summary, day, context),
        clockGrid(plot, 6),
        ...curveMarks(timeline, day, plot, context),
        ...glucoseAxis(plot, context),
        ...sticks(timeline, index, plot, isLong),
        { kind: 'line', role: 'axis', lines: [[plot.left, foot, right, foot]], width: 0.75 },
        ...noteLanes(notes, x, foot + AIR, right, context, isLong),
        ...(clock ? hourLabels([0, 6, 12, 18, 24], (hour) => x(hour * 60), clockY, context) : []),
      ];
    },
  };
}

/** One day a quarter of a page wide: date, time in range and curve. */
export function smallDayChart(
  timeline: Timeline,
  summary: DailySummary,
  index: number,
  given: ChartContext,
  height: number,
  lows: readonly Episode[],
): Drawing {
  const context = { ...given, text: SMALL.text };
  const { speaker, text } = context;
  const day = timeline.days[index]!;
  const top = text + 4;
  const plot: Plot = { left: 0, top, width: SMALL.width, height };
  const foot = round(top + height);
  return {
    width: round(SMALL.width),
    height: round(foot + 1),
    how: 'day',
    get summary() {
      return sentence(summary, notesOfDay(timeline, index).length, context);
    },
    get inWords() {
      return dayInWords(timeline, summary, index, lows, context);
    },
    get table() {
      return dayHours(timeline, index, context);
    },
    get along() {
      return dayAlong(timeline, index, plot, nameOf(day, context), context);
    },
    date: day.date,
    get marks(): Mark[] {
      const share = summary.inRange === null ? '–' : speaker.value({ q: 'share', value: summary.inRange });
      const at = { y: round(text), size: text, kind: 'text', role: 'ink' } as const;
      return [
        ...weekend(day, 0, 0, text + 1),
        { ...at, x: 4, text: nameOf(day, context), anchor: 'start', strong: true, date: day.date },
        { ...at, x: round(SMALL.width), text: share, anchor: 'end' },
        ...curveMarks(timeline, day, plot, context),
        rangeLines(plot, context),
        { kind: 'line', role: 'axis', lines: [[0, foot, round(SMALL.width), foot]], width: 0.75 },
      ];
    },
  };
}

const nameOf = (day: Day, { speaker }: ChartContext): string =>
  `${speaker.value({ q: 'date', value: day.date }, 'weekday')} ${speaker.value({ q: 'date', value: day.date }, 'compact')}`;

function curveMarks(timeline: Timeline, day: Day, plot: Plot, context: ChartContext): Mark[] {
  const curve = curveOf(timeline, day, plot);
  return [
    ...filledBeyond(curve, plot, context),
    ...trace(timeline, day, curve, plot),
    ...limitMarks(timeline, day, plot),
  ];
}

/** Weekday, date and time in range; a bar beside a Saturday and a Sunday. */
function dateMarks(summary: DailySummary, day: Day, context: ChartContext): Mark[] {
  const { speaker, text } = context;
  const line = (n: number, content: string, strong: boolean): Mark => ({
    kind: 'text',
    role: 'ink',
    x: 4,
    y: round(2 + n * (text + 2)),
    text: content,
    size: text,
    anchor: 'start',
    strong,
    ...(strong ? { date: day.date } : {}),
  });
  const date = (style: 'weekday' | 'compact') => speaker.value({ q: 'date', value: day.date }, style);
  const share = summary.inRange === null ? '–' : speaker.value({ q: 'share', value: summary.inRange });
  return [
    ...weekend(day, 0, 2, 3 * (text + 2)),
    line(1, date('weekday'), true),
    line(2, date('compact'), true),
    line(3, share, false),
  ];
}

const weekend = ({ weekday }: Day, x: number, y: number, h: number): Mark[] =>
  weekday < 6 ? [] : [{ kind: 'rect', role: 'ink', x, y, w: 2, h: round(h) }];

/** Finger sticks stand at their own height, where they can be compared with the curve. */
function sticks(timeline: Timeline, index: number, plot: Plot, isLong: LongActing): Mark[] {
  const x = clockScale(plot);
  const y = glucoseScale(plot);
  return timeline.notes.flatMap((note): Mark[] => {
    if (note.day !== index || !note.timed || note.amount === undefined || signKind(note, isLong) !== 'stick') return [];
    const mgdl = /mmol/i.test(note.unit ?? '') ? toMgPerDl(note.amount, 'mmol/L') : note.amount;
    return [{ kind: 'sign', shape: 'plus', role: 'ink', x: round(x(note.minute)), y: round(y(mgdl)), size: 6 }];
  });
}

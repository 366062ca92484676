import type { Drawing, Mark } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Episode } from '../model/measures.ts';
import type { Timeline } from '../model/timeline.ts';
import { addDays, DAY_MINUTES } from '../time/calendar.ts';
import type { ChartContext } from './context.ts';
import { lowsInWords } from './dayInWords.ts';
import { END, gone, LEFT, place } from './eveningFrame.ts';
import { eveningLabels } from './eveningLabels.ts';
import { eveningSigns } from './eveningSigns.ts';
import { type Evening, eveningsOf, gravest, NOON } from './eveningsOf.ts';
import { CONTENT_WIDTH } from './frame.ts';
import type { LongActing } from './noteLanes.ts';
import { otherLows } from './otherLows.ts';
import { round } from './pen.ts';

/** 5.1 mm: signs of notes above, the bars of the lows below. */
const ROW = 14.6;
const BAR = { top: 7.3, height: 6.3 };

/** A row for each evening with a low, with what was noted around it; every low that has none as a dated mark on one line. */
export function eveningsChart(
  timeline: Timeline,
  lows: readonly Episode[],
  most: number,
  given: ChartContext,
  isLong: LongActing,
): Drawing {
  const context = { ...given, text: 8 };
  const { speaker, text } = context;
  const all = eveningsOf(lows);
  const shown = gravest(all, most);
  const others = all.filter((one) => !shown.includes(one)).flatMap((one) => one.lows);
  const foot = shown.length * ROW;
  const below = foot + text + 5;
  const height = others.length > 0 ? below + 2 * text + 8 : below;
  const count = (value: number) => ({ q: 'count' as const, value });
  return {
    width: CONTENT_WIDTH,
    height: round(height),
    how: 'evenings',
    summary: speaker.say('charts.evenings.summary', {
      evenings: count(all.length),
      rows: count(shown.length),
      lows: count(lows.length),
      others: count(others.length),
    }),
    get inWords() {
      return lowsInWords(lows, context, true);
    },
    get table() {
      return {
        columns: (['day', 'start', 'length', 'lowest'] as const).map((name) => speaker.say(`charts.words.${name}`)),
        rows: lows.map((low) => [
          speaker.value({ q: 'date', value: low.date }, 'short'),
          speaker.value({ q: 'clock', value: low.startMinute }, 'short'),
          speaker.value({ q: 'minutes', value: low.minutes }),
          speaker.value({ q: 'glucose', value: low.extreme, limit: low.extremeLimit }),
        ]),
      };
    },
    get marks(): Mark[] {
      return [
        grid(foot),
        midnight(foot),
        ...shown.flatMap((one, row) => rowMarks(timeline, one, row * ROW, context, isLong)),
        ...clockLabels(foot, context),
        ...(others.length > 0 ? otherLows(timeline, others, below, LEFT, context) : []),
      ];
    },
  };
}

function grid(foot: number): Mark {
  const lines = [0, 3, 6, 9, 15, 18, 21, 24].map((hours) => [round(gone(hours)), 0, round(gone(hours)), foot]);
  return { kind: 'line', role: 'grid', lines, width: 0.5 };
}

/** Where one day ends and the next begins. */
function midnight(foot: number): Mark {
  const x = round(gone(12));
  return { kind: 'line', role: 'grid', lines: [[x, 0, x, foot]], width: 1.5 };
}

function clockLabels(foot: number, { speaker, text }: ChartContext): Mark[] {
  return [0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour): Mark => {
    const x = round(gone(hour));
    const anchor = hour === 0 ? 'start' : hour === 24 ? 'end' : 'middle';
    const minute = (NOON + hour * 60) % DAY_MINUTES;
    const name = speaker.value({ q: 'clock', value: minute }, 'short');
    return { kind: 'text', role: 'axis', x, y: round(foot + text + 1), text: name, size: text, anchor };
  });
}

function rowMarks(
  timeline: Timeline,
  { date, lows }: Evening,
  top: number,
  context: ChartContext,
  isLong: LongActing,
): Mark[] {
  const base = round(top + BAR.top + BAR.height);
  const bars = lows.map((low) => {
    const from = place(low.startMinute);
    return {
      low,
      from,
      to: Math.min(END, from + Math.max(2.5, (low.minutes / DAY_MINUTES) * (END - LEFT))),
    };
  });
  return [
    ...dates(date, bars, round(base - 1), context),
    { kind: 'line', role: 'grid', lines: [[LEFT, base, END, base]], width: 0.5 },
    ...bars.map(
      ({ low, from, to }): Mark => ({
        kind: 'rect',
        role: low.level === 2 ? 'very-low' : 'low',
        x: round(from),
        y: round(top + BAR.top),
        w: round(to - from),
        h: BAR.height,
        outline: 'ink',
        outlineWidth: 0.75,
      }),
    ),
    ...eveningLabels(bars, base, LEFT, context),
    ...eveningSigns(timeline, date, lows, top, isLong),
  ];
}

/**
 * The date of the evening at the left, and that of the morning at the right where a low lies there: strong are those on which one
 * began, so that a low of a morning is not taken for the day before.
 */
function dates(
  date: LocalDate,
  bars: readonly { low: Episode; to: number }[],
  y: number,
  { speaker, text }: ChartContext,
): Mark[] {
  const next = addDays(date, 1);
  const label = (of: LocalDate, style: 'compact' | 'day', x: number, anchor: 'start' | 'end'): Mark => {
    const began = bars.some(({ low }) => low.date === of);
    const words = (['weekday', style] as const).map((one) => speaker.value({ q: 'date', value: of }, one)).join(' ');
    const role = began ? 'ink' : 'axis';
    return { kind: 'text', role, x, y, text: words, size: text, anchor, date: of, ...(began ? { strong: true } : {}) };
  };
  return [
    label(date, 'compact', 0, 'start'),
    ...(bars.some(({ to }) => to > gone(12)) ? [label(next, 'day', CONTENT_WIDTH, 'end')] : []),
  ];
}

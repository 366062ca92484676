import type { Drawing, Mark } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Episode } from '../model/measures.ts';
import type { Timeline } from '../model/timeline.ts';
import { addDays, DAY_MINUTES } from '../time/calendar.ts';
import { amountWidth, type ChartContext } from './context.ts';
import { lowsInWords } from './dayInWords.ts';
import { type EveningFrame, gone, ON_PAPER, place } from './eveningFrame.ts';
import { eveningLabels, lowsLabels } from './eveningLabels.ts';
import { eveningSigns } from './eveningSigns.ts';
import { type Evening, eveningsOf, gravest, NOON } from './eveningsOf.ts';
import { CONTENT_WIDTH, NARROW_WIDTH, narrowOr } from './frame.ts';
import type { LongActing } from './noteLanes.ts';
import { otherLows } from './otherLows.ts';
import { round } from './pen.ts';

/** 5.1 mm: signs of notes above, the bars of the lows below. */
const ROW = 14.6;
const BAR = { top: 7.3, height: 6.3 };

/** On a narrow screen a row takes the whole width, and its dates and labels a line above it. */
const ON_SCREEN: EveningFrame = { left: 4, end: NARROW_WIDTH };
const HEAD = 11;

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
  const { narrow, whole } = narrowOr(given.width);
  const frame = narrow ? ON_SCREEN : ON_PAPER;
  const row = narrow ? ROW + HEAD : ROW;
  const all = eveningsOf(lows);
  const shown = gravest(all, most);
  const others = all.filter((one) => !shown.includes(one)).flatMap((one) => one.lows);
  const foot = shown.length * row;
  const below = foot + text + 5;
  const height = others.length > 0 ? below + 2 * text + 8 : below;
  const count = (value: number) => ({ q: 'count' as const, value });
  return {
    width: whole,
    height: round(height),
    how: 'evenings',
    get narrow() {
      return narrow ? undefined : eveningsChart(timeline, lows, most, { ...given, width: NARROW_WIDTH }, isLong);
    },
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
        grid(foot, frame),
        midnight(foot, frame),
        ...shown.flatMap((one, i) => rowMarks(timeline, one, i * row, context, isLong)),
        ...clockLabels(foot, narrow ? 6 : 3, frame, context),
        ...(others.length > 0 ? otherLows(timeline, others, below, ON_PAPER.left, context) : []),
      ];
    },
  };
}

function grid(foot: number, frame: EveningFrame): Mark {
  const at = (hours: number): number => round(gone(hours, frame));
  const lines = [0, 3, 6, 9, 15, 18, 21, 24].map((hours) => [at(hours), 0, at(hours), foot]);
  return { kind: 'line', role: 'grid', lines, width: 0.5 };
}

/** Where one day ends and the next begins. */
function midnight(foot: number, frame: EveningFrame): Mark {
  const x = round(gone(12, frame));
  return { kind: 'line', role: 'grid', lines: [[x, 0, x, foot]], width: 1.5 };
}

function clockLabels(foot: number, step: number, frame: EveningFrame, { speaker, text }: ChartContext): Mark[] {
  return Array.from({ length: 24 / step + 1 }, (_, i) => i * step).map((hour): Mark => {
    const x = round(gone(hour, frame));
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
  const { narrow } = narrowOr(context.width);
  const frame = narrow ? ON_SCREEN : ON_PAPER;
  const line = narrow ? top + HEAD : top;
  const base = round(line + BAR.top + BAR.height);
  const bars = lows.map((low) => {
    const from = place(low.startMinute, frame);
    const width = Math.max(2.5, (low.minutes / DAY_MINUTES) * (frame.end - frame.left));
    return { low, from, to: Math.min(frame.end, from + width) };
  });
  return [
    // No line of the clock runs through a figure.
    ...(narrow ? [{ kind: 'rect', role: 'paper', x: 0, y: round(top), w: NARROW_WIDTH, h: HEAD } as const] : []),
    ...dates(date, bars, round(narrow ? top + context.text : base - 1), context),
    { kind: 'line', role: 'grid', lines: [[frame.left, base, frame.end, base]], width: 0.5 },
    ...bars.map(
      ({ low, from, to }): Mark => ({
        kind: 'rect',
        role: low.level === 2 ? 'very-low' : 'low',
        x: round(from),
        y: round(line + BAR.top),
        w: round(to - from),
        h: BAR.height,
        outline: 'ink',
        outlineWidth: 0.75,
      }),
    ),
    ...(narrow ? [headLabel(lows, top, context)] : eveningLabels(bars, base, frame.left, context)),
    ...eveningSigns(timeline, date, lows, line, isLong, frame),
  ];
}

/** Between the date of an evening and that of its morning: each low where there is room, else all in one. */
const HEAD_ROOM = { from: 54, to: NARROW_WIDTH - 36 };

function headLabel(lows: readonly Episode[], top: number, context: ChartContext): Mark {
  const { one, several } = lowsLabels(context);
  const forms = [lows.map(one).join('; '), ...(lows.length > 1 ? [several(lows, false), several(lows, true)] : [])];
  const fits = (words: string): boolean => amountWidth(words, context.text) <= HEAD_ROOM.to - HEAD_ROOM.from;
  const text = forms.find(fits) ?? forms.at(-1)!;
  const y = round(top + context.text);
  return { kind: 'text', role: 'ink', x: HEAD_ROOM.from, y, text, size: context.text, anchor: 'start' };
}

/**
 * The date of the evening at the left, and that of the morning at the right where a low lies there: strong are those on which one
 * began, so that a low of a morning is not taken for the day before.
 */
function dates(
  date: LocalDate,
  bars: readonly { low: Episode; to: number }[],
  y: number,
  { speaker, text, width: whole = CONTENT_WIDTH }: ChartContext,
): Mark[] {
  const next = addDays(date, 1);
  const midnightAt = gone(12, whole < CONTENT_WIDTH ? ON_SCREEN : ON_PAPER);
  const label = (of: LocalDate, style: 'compact' | 'day', x: number, anchor: 'start' | 'end'): Mark => {
    const began = bars.some(({ low }) => low.date === of);
    const words = (['weekday', style] as const).map((one) => speaker.value({ q: 'date', value: of }, one)).join(' ');
    const role = began ? 'ink' : 'axis';
    return { kind: 'text', role, x, y, text: words, size: text, anchor, date: of, ...(began ? { strong: true } : {}) };
  };
  return [
    label(date, 'compact', 0, 'start'),
    ...(bars.some(({ to }) => to > midnightAt) ? [label(next, 'day', whole, 'end')] : []),
  ];
}

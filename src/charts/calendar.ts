import type { Drawing, Mark } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { BandMinutes, DailySummary } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import { addDays, DAY_MINUTES, weekdayOf } from '../time/calendar.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { frame, round } from './pen.ts';

/** Months side by side. */
export const MONTHS_A_ROW = 3;
/** Where a calendar stands beside single days. */
export const SMALL_MONTHS_A_ROW = 5;

interface Grid {
  gutter: number;
  month: number;
  /** Room for the date that a week starts with. */
  label: number;
  cell: { width: number; height: number; gap: number };
  small: boolean;
}

function gridOf(perRow: number, gutter: number, label: number, height: number, gap: number): Grid {
  const month = (CONTENT_WIDTH - gutter * (perRow - 1)) / perRow;
  return { gutter, month, label, cell: { width: (month - label) / 7, height, gap }, small: label === 0 };
}

const USUAL = gridOf(MONTHS_A_ROW, 15, 14, 16, 2);
const SMALL = gridOf(SMALL_MONTHS_A_ROW, 12, 0, 11, 1.5);
/** So that most names of months leave room for their share. */
const SMALL_TEXT = 7.5;
/** A band that was seen at all is at least this thick. */
const LEAST = 2;

/** The days of each calendar month, in order. */
export function byMonth(days: readonly DailySummary[]): DailySummary[][] {
  const months = new Map<string, DailySummary[]>();
  for (const day of days) {
    const month = day.date.slice(0, 7);
    const known = months.get(month);
    if (known) known.push(day);
    else months.set(month, [day]);
  }
  return [...months.values()];
}

/**
 * Up to three months as a calendar, weeks from Monday (ISO 8601): a box a day, as wide as the part of the day that
 * was read, its bands stacked in it by their share, lowest at the bottom. A day nothing is known of is a dotted box.
 */
export function calendarChart(
  months: readonly DailySummary[][],
  given: ChartContext,
  size: 'usual' | 'small' = 'usual',
): Drawing {
  const grid = size === 'small' ? SMALL : USUAL;
  const context = size === 'small' ? { ...given, text: SMALL_TEXT } : given;
  const { speaker, text } = context;
  const days = months.flat();
  const weeks = Math.max(...months.map((month) => weekOf(month.at(-1)!.date) + 1));
  const head = grid.small ? text + 5 : text * 2 + 9;
  const marks = months.flatMap((month, i) => oneMonth(month, i * (grid.month + grid.gutter), head, grid, context));
  const seen = days.filter((day) => day.inRange !== null);
  const with_ = (...bands: ('very-low' | 'low')[]) => ({
    q: 'count' as const,
    value: seen.filter((day) => bands.some((band) => day.minutes[band] > 0)).length,
  });
  return {
    width: CONTENT_WIDTH,
    height: round(head + weeks * grid.cell.height),
    how: 'calendar',
    summary: speaker.say('charts.calendar.summary', {
      from: { q: 'date', value: days[0]!.date },
      to: { q: 'date', value: days.at(-1)!.date },
      days: { q: 'count', value: seen.length },
      inRange: { q: 'share', value: inRange(days) ?? 0 },
      low: with_('very-low', 'low'),
      veryLow: with_('very-low'),
    }),
    get table() {
      return {
        columns: (['month', 'days', 'inRange', 'low', 'veryLow'] as const).map((name) =>
          speaker.say(`charts.calendar.${name}`),
        ),
        rows: months.map((month) => {
          const share = inRange(month);
          return [
            speaker.value({ q: 'date', value: month[0]!.date }, 'month'),
            speaker.value({ q: 'count', value: month.filter((day) => day.inRange !== null).length }),
            share === null ? '–' : speaker.value({ q: 'share', value: share }),
            speaker.value({
              q: 'count',
              value: month.filter((day) => day.minutes.low + day.minutes['very-low'] > 0).length,
            }),
            speaker.value({ q: 'count', value: month.filter((day) => day.minutes['very-low'] > 0).length }),
          ];
        }),
      };
    },
    marks,
  };
}

/** Share of all minutes with readings; null without any. */
function inRange(days: readonly DailySummary[]): number | null {
  const all = days.reduce((sum, { minutes }) => sum + total(minutes), 0);
  return all === 0 ? null : days.reduce((sum, { minutes }) => sum + minutes['in-range'], 0) / all;
}

const total = (minutes: BandMinutes): number => BANDS.reduce((sum, band) => sum + minutes[band], 0);

/** Row of the month in which a date stands. */
function weekOf(date: LocalDate): number {
  const first = weekdayOf(`${date.slice(0, 7)}-01`) - 1;
  return Math.floor((first + Number(date.slice(8)) - 1) / 7);
}

function oneMonth(days: DailySummary[], left: number, top: number, grid: Grid, context: ChartContext): Mark[] {
  const { cell, label, month, small } = grid;
  const { speaker, text } = context;
  const word = (value: string, x: number, y: number, anchor: 'start' | 'middle' | 'end', ink = false): Mark => ({
    kind: 'text',
    role: ink ? 'ink' : 'axis',
    x: round(x),
    y: round(y),
    text: value,
    size: text,
    anchor,
    strong: ink,
  });
  const share = inRange(days);
  const column = (date: LocalDate): number => left + label + (weekdayOf(date) - 1) * cell.width;
  const name = speaker.value({ q: 'date', value: days[0]!.date }, 'month');
  const marks: Mark[] = [word(name, left, text, 'start', true)];
  if (share !== null) {
    const quantity = { q: 'share' as const, value: share };
    const whole = small ? speaker.value(quantity) : speaker.say('charts.dayStrip.inRange', { share: quantity });
    // A long name of a month leaves a small one no room for its share, which the table of the picture has.
    const taken = 0.94 * roughWidth(`${name}  ${whole}`, text);
    if (!small || taken <= month - cell.gap) marks.push(word(whole, left + month - cell.gap, text, 'end'));
  }
  // Any Monday names the days of the week.
  for (let i = 0; i < (small ? 0 : 7); i++) {
    const date = addDays('2024-01-01', i);
    const name = [...speaker.value({ q: 'date', value: date }, 'weekday')][0]!.toUpperCase();
    marks.push(word(name, column(date) + (cell.width - cell.gap) / 2, text * 2 + 4, 'middle'));
  }
  const outlines: number[][] = [];
  days.forEach((day, i) => {
    const [x, y] = [column(day.date), top + weekOf(day.date) * cell.height];
    if (!small && (i === 0 || weekdayOf(day.date) === 1))
      marks.push(word(speaker.value({ q: 'date', value: day.date }, 'day'), left + label - 3, y + 11, 'end'));
    marks.push(...oneDay(day, round(x), round(y), cell, outlines));
  });
  return [...marks, { kind: 'line', role: 'axis', lines: outlines, width: 0.5 }];
}

function oneDay(
  { minutes, share }: DailySummary,
  x: number,
  y: number,
  cell: Grid['cell'],
  outlines: number[][],
): Mark[] {
  const [width, height] = [round(cell.width - cell.gap), round(cell.height - cell.gap)];
  const all = total(minutes);
  const empty: Mark = {
    kind: 'rect',
    role: 'paper',
    x,
    y,
    w: width,
    h: height,
    outline: 'axis',
    outlineWidth: 0.5,
    dotted: true,
  };
  if (all === 0) return [empty];
  const seen = BANDS.filter((band) => minutes[band] > 0);
  const least = Math.min(LEAST, height / (BANDS.length + 1));
  const free = height - least * seen.length;
  const w = round(Math.max(2, width * Math.min(1, share)));
  const marks: Mark[] = share < 0.995 && all < DAY_MINUTES ? [empty] : [];
  let foot = y + height;
  for (const band of seen) {
    const h = least + (free * minutes[band]) / all;
    foot -= h;
    marks.push({ kind: 'rect', role: band, x, y: round(foot), w, h: round(h) });
    // Without colour only a line shows where one band ends and the next begins.
    if (foot > y + 0.1) outlines.push([x, round(foot), round(x + w), round(foot)]);
  }
  outlines.push(frame(x, y, w, height));
  return marks;
}

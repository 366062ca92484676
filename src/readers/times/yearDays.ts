import { DAY_MS, HOUR_MS } from '../../time/calendar.ts';
import { dayNumber, FIRST_YEAR } from './dayOrder.ts';
import { packDate, SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** Rows no further apart than this go on with one another (ours). */
const NEAR = HOUR_MS;

/** Days since 1970-01-01. */
export interface DaySpan {
  from: number;
  to: number;
}

/** The days on which rows lie that have a time. */
export function daysOf(wall: Float64Array): DaySpan {
  const span = { from: Number.POSITIVE_INFINITY, to: Number.NEGATIVE_INFINITY };
  for (const ms of wall) {
    if (Number.isNaN(ms)) continue;
    span.from = Math.min(span.from, Math.floor(ms / DAY_MS));
    span.to = Math.max(span.to, Math.floor(ms / DAY_MS));
  }
  return span;
}

/** Days that notes may lie before and after the others (ours). */
const DAYS_OUTSIDE = 3;

/**
 * Dates with the year before the day and the day before the month, as no standard writes them. Either some are none with the month in
 * the middle, and more of them follow each other turned; or all fit both, and at each midnight the rows go on within the hour, where
 * with the month in the middle a month would lie between; or only turned they lie among days that are `known` to be written so.
 * Turns them to year, month, day; gives how many.
 */
export function mendYearDays(dates: TimeCells, clock: TimeCells, known: DaySpan | undefined): number {
  const rows: number[] = [];
  for (let k = 0; k < dates.shape.length; k++) {
    if (dates.shape[k] !== SHAPE.stamp && dates.shape[k] !== SHAPE.day) continue;
    if (dates.open[k] !== 0) return 0;
    // A clock that lost its date says nothing of how dates are written.
    if ((dates.yearDays.get(k) ?? dates.date[k]!) >>> 9 < FIRST_YEAR) continue;
    rows.push(k);
  }
  const turned = (k: number): number => {
    const own = dates.yearDays.get(k);
    const code = dates.date[k]!;
    return own ?? ((code & 31) > 12 ? 0 : packDate(code >>> 9, code & 31, (code >>> 5) & 15));
  };
  const turns =
    dates.yearDays.size === 0
      ? goOn(rows, dates.date, turned, clock) || (known !== undefined && isAmong(rows, dates.date, turned, known))
      : rows.every((k) => !Number.isNaN(dayOf(turned(k)))) &&
        (dates.yearDays.size === rows.length || steps(rows.map(turned)) > steps(rows.map((k) => dates.date[k]!)));
  if (!turns) return 0;
  // Whoever asks again finds them turned.
  for (const k of rows) dates.yearDays.set(k, turned(k));
  for (const k of rows) dates.date[k] = dates.yearDays.get(k)!;
  return rows.length;
}

function isAmong(rows: number[], date: Int32Array, turned: (k: number) => number, { from, to }: DaySpan): boolean {
  const within = (code: number): boolean => dayOf(code) >= from - DAYS_OUTSIDE && dayOf(code) <= to + DAYS_OUTSIDE;
  return rows.every((k) => within(turned(k))) && !rows.every((k) => within(date[k]!));
}

const dayOf = (code: number): number => dayNumber(code >>> 9, (code >>> 5) & 15, code & 31);

/** How many dates are a day or two from the one before. */
function steps(codes: number[]): number {
  const days = codes.filter((code, i) => code !== codes[i - 1]).map(dayOf);
  return days.filter((day, i) => Math.abs(day - days[i - 1]!) <= 2).length;
}

/** Whether at each change of the date the rows go on within the hour as turned, and none does as it stands. */
function goOn(rows: number[], date: Int32Array, turned: (k: number) => number, clock: TimeCells): boolean {
  let changes = 0;
  for (let i = 1; i < rows.length; i++) {
    const [a, b] = [rows[i - 1]!, rows[i]!];
    if (date[a] === date[b]) continue;
    // A date that is carried down is followed by the clock times of its day.
    const before = clock.shape[b - 1] === SHAPE.clock ? b - 1 : a;
    const ms = clock.ms[b]! - clock.ms[before]!;
    const isNear = (days: number): boolean => Math.abs(days * DAY_MS + ms) <= NEAR;
    if (isNear(dayOf(date[b]!) - dayOf(date[a]!)) || !isNear(dayOf(turned(b)) - dayOf(turned(a)))) return false;
    changes++;
  }
  return changes > 0;
}

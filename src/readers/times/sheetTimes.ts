import { DAY_MS } from '../../time/calendar.ts';
import { readNumber } from '../table/numbers.ts';
import { locate, type Records } from '../table/records.ts';
import { dayNumber, openDay } from './dayOrder.ts';
import { packDate, SHAPE } from './stamp.ts';
import { NOT_A_TIME, type TimeCells } from './timeColumn.ts';

/** Days on which programs put a time of day that has none: the first ones of spreadsheets' counts and of computers' clocks. */
const NO_DAYS = new Set([
  dayNumber(1899, 12, 30),
  dayNumber(1899, 12, 31),
  dayNumber(1900, 1, 1),
  dayNumber(1904, 1, 1),
  dayNumber(1970, 1, 1),
]);

/**
 * Beside a column of days, times of day as spreadsheets write them out: a fraction of a day (0.2930555556), or a clock on
 * a day that is none (1899-12-30 07:02). Days themselves may be numbers (46036), or carry an empty midnight. `dayZero` gives
 * the day from which such numbers count, or undefined after a refusal. False then.
 */
export function mendSheetTimes(
  records: Records,
  from: number,
  columns: TimeCells[],
  dayZero: (days: TimeCells) => number | undefined,
): boolean {
  if (columns.length < 2) return true;
  for (const cells of columns)
    if (columns.some((other) => other !== cells && holdsDays(other))) mendClock(records, from, cells);
  const clock = columns.find(({ counts }) => counts[SHAPE.clock]! > 0);
  if (!clock) return true;
  for (const cells of columns) {
    if (cells === clock) continue;
    const { counts, shape, ms, date } = cells;
    if (counts[SHAPE.stamp]! > 0 && ms.every((time, k) => shape[k] !== SHAPE.stamp || time === 0))
      turn(cells, SHAPE.stamp, SHAPE.day);
    const whole = counts[SHAPE.serial]! > 0 && ms.every((day, k) => shape[k] !== SHAPE.serial || Number.isInteger(day));
    if (!whole || columns.some((other) => other.counts[SHAPE.day]! > 0)) continue;
    const zero = dayZero(cells);
    if (zero === undefined) return false;
    for (let k = 0; k < shape.length; k++) {
      if (shape[k] !== SHAPE.serial) continue;
      const day = new Date((zero + ms[k]!) * DAY_MS);
      date[k] = packDate(day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate());
      ms[k] = 0;
    }
    turn(cells, SHAPE.serial, SHAPE.day);
  }
  return true;
}

const holdsDays = ({ counts, ms, shape }: TimeCells): boolean =>
  counts[SHAPE.day]! > 0 ||
  (counts[SHAPE.serial]! > 0 && ms.every((day, k) => shape[k] !== SHAPE.serial || Number.isInteger(day))) ||
  (counts[SHAPE.stamp]! > 0 && ms.every((time, k) => shape[k] !== SHAPE.stamp || time === 0));

function mendClock(records: Records, from: number, cells: TimeCells): void {
  const { shape, date, open, counts } = cells;
  if (counts[SHAPE.stamp]! > 0) {
    const none = shape.every((one, k) => one !== SHAPE.stamp || isNoDay(date[k]!, open[k]!));
    if (none) turn(cells, SHAPE.stamp, SHAPE.clock);
    return;
  }
  const part = fractions(records, from, cells);
  if (!part) return;
  for (let k = 0; k < shape.length; k++) {
    if (Number.isNaN(part[k]!)) {
      if (shape[k] !== SHAPE.none) {
        counts[shape[k]!]!--;
        shape[k] = SHAPE.none;
        cells.flags[k] = NOT_A_TIME;
      }
      continue;
    }
    counts[shape[k]!]!--;
    shape[k] = SHAPE.clock;
    counts[SHAPE.clock]!++;
    cells.flags[k] = 0;
    // Fractions of a day are not exact: the nearest second is what was meant.
    cells.ms[k] = Math.round(part[k]! * 86_400) * 1000;
  }
  // A fraction leaves no half of the day open.
  cells.halfLost = false;
}

function isNoDay(code: number, open: number): boolean {
  if (!open) return NO_DAYS.has(dayNumber(code >>> 9, (code >>> 5) & 15, code & 31));
  return NO_DAYS.has(openDay(code, 'day-first')) || NO_DAYS.has(openDay(code, 'month-first'));
}

/** Numbers past a whole day in a column of its parts (ours). */
const MOST_ODD = 5;

/** The parts of a day in a column of nothing else; undefined where any cell is none, or all could be a clock's (7.05). */
function fractions(records: Records, from: number, cells: TimeCells): Float64Array | undefined {
  const n = cells.shape.length;
  const part = new Float64Array(n).fill(Number.NaN);
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  let [exact, filled, odd] = [0, 0, 0];
  for (let k = 0; k < n; k++) {
    if (!locate(records, from + k, cells.column.index, span)) continue;
    const value = readNumber(records.bytes, span.from, span.to, look);
    if (Number.isNaN(value)) {
      // A title or a sum between the rows.
      if (cells.flags[k] === NOT_A_TIME) continue;
      return undefined;
    }
    if (value < 0 || value >= 1) {
      // So is a number where a sum stands; many are no times of day.
      if (++odd > MOST_ODD) return undefined;
      continue;
    }
    filled++;
    if (look.after > 2) exact++;
    part[k] = value;
  }
  return filled > odd * 4 && exact * 2 >= filled ? part : undefined;
}

function turn({ shape, counts }: TimeCells, from: number, to: number): void {
  for (let k = 0; k < shape.length; k++) if (shape[k] === from) shape[k] = to;
  counts[to]! += counts[from]!;
  counts[from] = 0;
}

import { DAY_MS, MINUTE_MS } from '../../time/calendar.ts';
import { NO_OFFSET } from '../../time/offset.ts';
import { plain, tokens } from '../table/vocabulary.ts';
import { dayNumber, openDay } from '../times/dayOrder.ts';
import { SHAPE } from '../times/stamp.ts';
import type { TimeCells } from '../times/timeColumn.ts';

/** How a second column of times stands to the first: `same` always, `shifted` by few distances, or `unlike`. */
export interface Distance {
  is: 'same' | 'shifted' | 'unlike';
  /** Minutes the second lies ahead, in the first row that has both. */
  minutes: number;
  row: number;
}

/** Rows looked at; the clocks change twice a year and travellers now and then. */
const SAMPLE = 600;
const MOST_CHANGES = 8;
/** Seconds two forms of one time may differ: one may be cut to the minute. */
const ROUNDING = 60_000;

/** Compares two columns of whole times, or of clock times, row by row. Undefined where no row has both. */
export function distanceOf(a: TimeCells, b: TimeCells): Distance | undefined {
  const n = a.shape.length;
  const step = Math.max(1, Math.floor(n / SAMPLE));
  let first: { ms: number; row: number } | undefined;
  let last = Number.NaN;
  let [changes, rows, moved] = [0, 0, 0];
  for (let k = 0; k < n; k += step) {
    const ms = clockDifference(a, b, k);
    if (Number.isNaN(ms)) continue;
    rows++;
    first ??= { ms, row: k };
    if (Math.abs(ms) >= ROUNDING) moved++;
    if (!Number.isNaN(last) && Math.abs(ms - last) >= ROUNDING) changes++;
    last = ms;
  }
  if (!first) return undefined;
  const minutes = Math.round(first.ms / MINUTE_MS);
  if (moved === 0) return { is: 'same', minutes: 0, row: first.row };
  return { is: changes <= MOST_CHANGES && changes * 4 < rows ? 'shifted' : 'unlike', minutes, row: first.row };
}

/** Milliseconds from a row's time in one column to its time in the other, as their clocks show them. */
function clockDifference(a: TimeCells, b: TimeCells, k: number): number {
  const [x, y] = [a.shape[k]!, b.shape[k]!];
  const clocks = (shape: number): boolean => shape === SHAPE.stamp || shape === SHAPE.clock;
  if (!clocks(x) || !clocks(y)) return Number.NaN;
  const clock = b.ms[k]! - a.ms[k]!;
  if (x === SHAPE.stamp && y === SHAPE.stamp) {
    // An order of day and month that is still open is the one under which the clocks lie within a day of each other.
    for (const order of ORDERS) {
      const whole = clock + (dayOf(b, k, order) - dayOf(a, k, order)) * DAY_MS;
      if (Math.abs(whole) <= 15 * 3_600_000 || (!a.open[k] && !b.open[k])) return whole;
    }
  }
  // Without a common date the nearer of both ways round the clock is meant.
  return ((clock + DAY_MS / 2 + DAY_MS) % DAY_MS) - DAY_MS / 2;
}

const ORDERS = ['day-first', 'month-first', 'year-first'] as const;

function dayOf({ date, open }: TimeCells, k: number, order: (typeof ORDERS)[number]): number {
  const code = date[k]!;
  return open[k] ? openDay(code, order) : dayNumber(code >>> 9, (code >>> 5) & 15, code & 31);
}

const LOCAL = new Set(
  'local locale lokal lokale lokaal lokalzeit ortszeit display displayed wall wearer paikallinen lokalny lokal lokalt yerel helyi'.split(
    ' ',
  ),
);
const WORLD = new Set('utc gmt system server universal internal epoch unix zulu weltzeit systemzeit'.split(' '));

/** 2 the wearer's own clock, 1 says how far it is from world time, 0 unknown, -1 world time or a machine's. */
export function standing({ column, offset }: TimeCells): number {
  const words = tokens(plain(column.name));
  if (words.some((word) => LOCAL.has(word))) return 2;
  let own = NO_OFFSET;
  for (let k = 0; k < offset.length; k++) {
    if (offset[k] === NO_OFFSET) continue;
    own = offset[k]!;
    if (own !== 0) break;
  }
  if (own !== NO_OFFSET) return own === 0 ? -1 : 1;
  return words.some((word) => WORLD.has(word)) ? -1 : 0;
}

/** The one of two clocks that the person lived by; undefined when nothing tells. */
export function ownClock(a: TimeCells, b: TimeCells): TimeCells | undefined {
  const [x, y] = [standing(a), standing(b)];
  if (x === y) return undefined;
  // Only a clock that is said to be the wearer's, or one beside world time, is it.
  return Math.max(x, y) > 0 || Math.min(x, y) < 0 ? (x > y ? a : b) : undefined;
}

/** Gives a clock without offsets the distance from the world time beside it, where that is one that zones have. */
export function offsetsFrom(local: TimeCells, world: TimeCells): void {
  for (let k = 0; k < local.offset.length; k++) {
    if (local.offset[k] !== NO_OFFSET) continue;
    const whole = clockDifference(world, local, k);
    // The first hour of a day that counts its hours to 24, not yet mended.
    const ms = local.ms[k]! >= DAY_MS && whole > DAY_MS / 2 ? whole - DAY_MS : whole;
    const quarters = Math.round(ms / (15 * MINUTE_MS));
    if (Number.isNaN(ms) || Math.abs(ms - quarters * 15 * MINUTE_MS) >= ROUNDING || Math.abs(quarters) > 60) continue;
    local.offset[k] = quarters * 15;
  }
}

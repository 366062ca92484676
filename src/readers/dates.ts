import { NO_OFFSET } from '../time/offset.ts';
import { CLOCK_FLAGS, readClock } from './clock.ts';
import { readNamedDate } from './months.ts';

/** What a cell of a time column holds, as far as the cell alone can tell. */
export const SHAPE = { none: 0, stamp: 1, day: 2, clock: 3, seconds: 4, millis: 5, serial: 6 } as const;

/** Working space for one cell; filled by the readers below so that no row allocates. */
export interface Stamp {
  /** Packed date: see packDate and packOpen. */
  date: number;
  /** The order of day, month and year is still open. */
  open: boolean;
  shortYear: boolean;
  /** Milliseconds of the day; for epochs and serials the number itself. */
  ms: number;
  hour: number;
  offset: number;
  /** 0 none, 1 before noon, 2 after noon. */
  half: number;
  flags: number;
  zone: string;
}

export function newStamp(): Stamp {
  return { date: 0, open: false, shortYear: false, ms: 0, hour: 0, offset: NO_OFFSET, half: 0, flags: 0, zone: '' };
}

/** A date whose parts are certain. Parts that fit no calendar give day 0 of month 0: they may not spill into each other. */
export const packDate = (y: number, m: number, d: number): number =>
  m <= 12 && d <= 31 ? (y << 9) | (m << 5) | d : y << 9;
/** Three numbers whose order the whole column will settle. */
export const packOpen = (a: number, b: number, c: number): number => (a << 21) | (b << 14) | c;

const isDigit = (b: number | undefined): b is number => b !== undefined && b >= 0x30 && b <= 0x39;

/** Reads one cell of a time column (ISO 8601 in its extended and basic forms, day/month/year in any order, epochs, serials). */
export function readStamp(bytes: Uint8Array, from: number, to: number, out: Stamp): number {
  out.open = out.shortYear = false;
  out.offset = NO_OFFSET;
  out.half = out.flags = 0;
  out.ms = 0;
  if (to - from > 80) return SHAPE.none;
  let i = bytes[from] === 0x27 ? from + 1 : from;
  const begin = i;
  let a = 0;
  let digits = 0;
  for (; i < to && isDigit(bytes[i]); i++, digits++) a = a * 10 + bytes[i]! - 0x30;
  if (digits === 0) return readNamedDate(bytes, begin, to, out);
  if (i === to) return readBare(bytes, begin, digits, a, out);
  const mark = bytes[i]!;
  if (mark === 0x3a || mark === 0x68) return readClock(bytes, begin, to, out) ? SHAPE.clock : SHAPE.none;
  if (digits === 8 && (mark === 0x54 || mark === 0x20)) {
    out.date = packDate(Math.trunc(a / 10000), Math.trunc(a / 100) % 100, a % 100);
    return afterDate(bytes, i, to, out);
  }
  if ((digits === 5 || digits === 10) && (mark === 0x2e || mark === 0x2c))
    return readFraction(bytes, i, to, digits, a, out);
  if (mark !== 0x2d && mark !== 0x2f && mark !== 0x2e) return readNamedDate(bytes, begin, to, out);
  i++;
  let b = 0;
  let second = 0;
  for (; i < to && isDigit(bytes[i]); i++, second++) b = b * 10 + bytes[i]! - 0x30;
  if (second === 3 && digits === 4 && mark === 0x2d) {
    // Ordinal date: the day of the year counts on from 1 January.
    const day = new Date(Date.UTC(a, 0, b));
    out.date = packDate(day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate());
    if (b < 1 || day.getUTCFullYear() !== a) out.flags |= CLOCK_FLAGS.impossible;
    return afterDate(bytes, i, to, out);
  }
  if (second === 0 || second > 2 || bytes[i] !== mark || i >= to) {
    if (second > 0 && readClock(bytes, begin, to, out)) return SHAPE.clock;
    return readNamedDate(bytes, begin, to, out);
  }
  i++;
  // `14. 1. 2026` puts blanks behind its dots.
  let c = 0;
  let third = 0;
  for (; i < to && isDigit(bytes[i]); i++, third++) c = c * 10 + bytes[i]! - 0x30;
  if (digits === 4 && third >= 1 && third <= 2) {
    out.date = packDate(a, b, c);
  } else if (digits <= 2 && (third === 4 || third === 2)) {
    out.open = true;
    out.shortYear = third === 2;
    out.date = packOpen(a, b, c);
  } else return SHAPE.none;
  return afterDate(bytes, i, to, out);
}

/** The clock behind a date, if there is one. */
export function afterDate(bytes: Uint8Array, from: number, to: number, out: Stamp): number {
  let i = from;
  if (i >= to) return SHAPE.day;
  const mark = bytes[i]!;
  if (mark === 0x54 || mark === 0x74 || mark === 0x5f || mark === 0x2d) i++;
  else {
    if (mark !== 0x20 && mark !== 0x2c && mark !== 0x2e && mark !== 0xc2 && mark !== 0xe2 && mark !== 0x09)
      return SHAPE.none;
    while (i < to && !isDigit(bytes[i])) {
      if (i - from > 8) return SHAPE.none;
      i++;
    }
    if (i >= to) return SHAPE.none;
  }
  return readClock(bytes, i, to, out) ? SHAPE.stamp : SHAPE.none;
}

/** Digits only: basic ISO forms, epoch seconds or milliseconds, a spreadsheet's day number, or `0705`. */
function readBare(bytes: Uint8Array, from: number, digits: number, n: number, out: Stamp): number {
  out.ms = n;
  if (digits === 5) return n >= 20000 && n <= 80000 ? SHAPE.serial : SHAPE.none;
  if (digits === 13) return SHAPE.millis;
  if (digits === 10) return SHAPE.seconds;
  const date = digits === 8 ? n : digits === 12 ? Math.trunc(n / 1e4) : digits === 14 ? Math.trunc(n / 1e6) : 0;
  if (date > 0) {
    out.ms = 0;
    out.date = packDate(Math.trunc(date / 10000), Math.trunc(date / 100) % 100, date % 100);
    if (digits === 8) return SHAPE.day;
    return readClock(bytes, from + 8, from + digits, out) ? SHAPE.stamp : SHAPE.none;
  }
  if (digits === 4) return readClock(bytes, from, from + 4, out) ? SHAPE.clock : SHAPE.none;
  return SHAPE.none;
}

function readFraction(bytes: Uint8Array, from: number, to: number, digits: number, whole: number, out: Stamp): number {
  let value = whole;
  let scale = 0.1;
  for (let i = from + 1; i < to; i++) {
    if (!isDigit(bytes[i])) return SHAPE.none;
    value += (bytes[i]! - 0x30) * scale;
    scale /= 10;
  }
  out.ms = value;
  if (digits === 10) return SHAPE.seconds;
  return whole >= 20000 && whole <= 80000 ? SHAPE.serial : SHAPE.none;
}

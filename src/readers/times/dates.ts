import { NO_OFFSET } from '../../time/offset.ts';
import { afterDate, CLOCK_FLAGS, readClock, readHalfFirst } from './clockCell.ts';
import { readNamedDate } from './months.ts';
import { packDate, packOpen, SHAPE, type Stamp } from './stamp.ts';

const isDigit = (b: number | undefined): b is number => b !== undefined && b >= 0x30 && b <= 0x39;

/** Reads one cell of a time column (ISO 8601 in its extended and basic forms, day/month/year in any order, epochs, serials). */
export function readStamp(bytes: Uint8Array, from: number, to: number, out: Stamp): number {
  out.open = out.shortYear = false;
  out.offset = NO_OFFSET;
  out.half = out.flags = 0;
  out.ms = out.yearDay = 0;
  if (to - from > 80) return SHAPE.none;
  let i = bytes[from] === 0x27 ? from + 1 : from;
  const begin = i;
  let a = 0;
  let digits = 0;
  for (; i < to && isDigit(bytes[i]); i++, digits++) a = a * 10 + bytes[i]! - 0x30;
  if (digits === 0) return readHalfFirst(bytes, begin, to, out) ? SHAPE.clock : readNamedDate(bytes, begin, to, out);
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
    if (b > 12) out.yearDay = packDate(a, c, b);
  } else if (digits <= 2 && (third === 4 || third === 2)) {
    out.open = true;
    out.shortYear = third === 2;
    out.date = packOpen(a, b, c);
  } else return SHAPE.none;
  return afterDate(bytes, i, to, out);
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

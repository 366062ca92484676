import { bytesOf, latin1, utf8 } from '../../bytes/text.ts';
import { halfOf } from './halfWords.ts';
import { SHAPE, type Stamp } from './stamp.ts';
import { halfBetween } from './wordsBetween.ts';

const isDigit = (b: number | undefined): b is number => b !== undefined && b >= 0x30 && b <= 0x39;

/** Set in Stamp.flags. */
export const CLOCK_FLAGS = { impossible: 1, second60: 2, needlessHalf: 4, halfGiven: 8 } as const;

/**
 * Reads a clock time from `i`: `12:05`, `12:05:30.250`, `7h05`, `7.05`, `12:05 p.m.`, then an offset or zone as in
 * RFC 3339 and RFC 9557. False when it is no clock; parts out of range set the `impossible` flag instead.
 */
export function readClock(bytes: Uint8Array, i: number, to: number, out: Stamp): boolean {
  let hour = 0;
  let digits = 0;
  for (; isDigit(bytes[i]) && i < to; i++, digits++) hour = hour * 10 + bytes[i]! - 0x30;
  let minute = 0;
  let second = 0;
  let milli = 0;
  if (digits === 4 || digits === 6) {
    // Basic form of ISO 8601: hhmm or hhmmss.
    if (digits === 6) second = hour % 100;
    const hhmm = digits === 6 ? Math.trunc(hour / 100) : hour;
    minute = hhmm % 100;
    hour = Math.trunc(hhmm / 100);
  } else {
    const mark = bytes[i];
    if (digits === 0 || digits > 2 || i >= to) return false;
    if (mark !== 0x3a && mark !== 0x2e && mark !== 0x68) {
      // `7 PM`: an hour with its half, nothing else.
      const half = readTail(bytes, i, to, hour, out);
      if (!half || !(out.flags & CLOCK_FLAGS.halfGiven)) return false;
      return finish(hour, 0, 0, 0, out);
    }
    i++;
    let n = 0;
    for (; i < to && isDigit(bytes[i]); i++, n++) minute = minute * 10 + bytes[i]! - 0x30;
    if (n === 0 || n > 2) return false;
    if (i < to && (bytes[i] === 0x3a || (bytes[i] === 0x2e && mark === 0x2e))) {
      i++;
      n = 0;
      for (; i < to && isDigit(bytes[i]); i++, n++) second = second * 10 + bytes[i]! - 0x30;
      if (n === 0 || n > 2) return false;
    }
  }
  if (i < to && (bytes[i] === 0x2e || bytes[i] === 0x2c) && isDigit(bytes[i + 1])) {
    i++;
    let scale = 100;
    for (; i < to && isDigit(bytes[i]); i++) {
      milli += (bytes[i]! - 0x30) * scale;
      scale /= 10;
    }
  }
  if (i < to && !readTail(bytes, i, to, hour, out)) return false;
  return finish(hour, minute, second, Math.trunc(milli), out);
}

/** More letters than this between a date and its clock are no words of ours. */
const LONGEST_BETWEEN = 24;
/** Marks that alone may stand there: T, t, _, -, blank, comma, dot, tab. */
const BETWEEN = new Set([0x54, 0x74, 0x5f, 0x2d, 0x20, 0x2c, 0x2e, 0x09]);

/** The clock behind a date, if there is one. What stands between is a mark, `at` in some language, or a half of the day. */
export function afterDate(bytes: Uint8Array, from: number, to: number, out: Stamp): number {
  if (from >= to) return SHAPE.day;
  const i = firstDigit(bytes, from, to);
  if (i < 0 || i === from) return SHAPE.none;
  if (i > from + 1 || !BETWEEN.has(bytes[from]!)) {
    const half = halfBetween(utf8(bytes, from, i));
    if (half === undefined) return SHAPE.none;
    if (half !== 0) takeHalf(half, out);
  }
  return readClock(bytes, i, to, out) ? SHAPE.stamp : SHAPE.none;
}

/** `下午 3:05`: a clock with its half in front. */
export function readHalfFirst(bytes: Uint8Array, from: number, to: number, out: Stamp): boolean {
  const i = firstDigit(bytes, from, to);
  if (i < 0) return false;
  const half = halfOf(utf8(bytes, from, i));
  if (half === 0) return false;
  takeHalf(half, out);
  return readClock(bytes, i, to, out);
}

function takeHalf(half: 1 | 2, out: Stamp): void {
  out.half = half;
  out.flags |= CLOCK_FLAGS.halfGiven;
}

function firstDigit(bytes: Uint8Array, from: number, to: number): number {
  const last = Math.min(to, from + LONGEST_BETWEEN);
  for (let i = from; i < last; i++) if (isDigit(bytes[i])) return i;
  return -1;
}

function finish(hour: number, minute: number, second: number, milli: number, out: Stamp): boolean {
  let h = hour;
  if (out.half !== 0) {
    if (h > 12) {
      // 14:05 PM says the same twice; 14:05 AM contradicts itself.
      if (out.half === 2) out.flags |= CLOCK_FLAGS.needlessHalf;
      else out.flags |= CLOCK_FLAGS.impossible;
    } else if (h === 0) {
      if (out.half === 2) out.flags |= CLOCK_FLAGS.impossible;
    } else h = (h % 12) + (out.half === 2 ? 12 : 0);
  }
  let s = second;
  if (s === 60) {
    s = 59.999;
    out.flags |= CLOCK_FLAGS.second60;
  }
  const midnight = h === 24 && minute === 0 && second === 0;
  if ((h > 23 && !midnight) || minute > 59 || s >= 60) out.flags |= CLOCK_FLAGS.impossible;
  out.hour = hour;
  out.ms = Math.round(((h * 60 + minute) * 60 + s) * 1000) + milli;
  return true;
}

/** A word, an offset, a zone in brackets. */
const TAIL =
  /^[\s\u00a0\u202f]*(\p{L}[\p{L}\p{M}.'’"״׳\s\u00a0\u202f]{0,14}?)??[\s\u00a0\u202f]*(z|utc|gmt)?([+-]\d{1,2}:?(?:\d\d)?)?(?:\[([A-Za-z_/+-]{3,40})\])?$/iu;
/** Words that say no more than that it is a clock. */
const HOURS = /^(?:uhr|h|hrs?\.?|ч\.?)$/iu;

/** What may follow the digits: AM or PM, `Uhr`, an offset, a zone in brackets. False when it is none of these. */
function readTail(bytes: Uint8Array, from: number, to: number, hour: number, out: Stamp): boolean {
  let i = from;
  const b = bytes[i]!;
  if (b === 0x5a && i + 1 === to) {
    out.offset = 0;
    return true;
  }
  if ((b === 0x2b || b === 0x2d) && isDigit(bytes[i + 1])) return readOffset(bytes, i, to, out);
  const tail = utf8(bytes, i, Math.min(to, i + 80)).replaceAll('\u2212', '-');
  const found = TAIL.exec(tail);
  if (!found || hour > 99) return false;
  const [, word, utc, offset, zone] = found;
  if (word) {
    const half = halfOf(word);
    if (half === 0 && !HOURS.test(word)) return false;
    if (half !== 0) takeHalf(half, out);
  }
  if (zone) out.zone = zone;
  if (utc) out.offset = 0;
  if (offset) {
    const text = bytesOf(offset);
    i = 0;
    return readOffset(text, i, text.length, out);
  }
  return true;
}

/** `+02:00`, `+0200`, `+02`. Real offsets lie within 15 hours. */
function readOffset(bytes: Uint8Array, from: number, to: number, out: Stamp): boolean {
  let i = from + 1;
  let digits = 0;
  let value = 0;
  for (; i < to; i++) {
    const b = bytes[i]!;
    if (b === 0x3a && digits > 0) continue;
    if (b === 0x5b) {
      const zone = latin1(bytes, i + 1, to - 1);
      if (bytes[to - 1] !== 0x5d || zone.length > 40) return false;
      out.zone = zone;
      break;
    }
    if (!isDigit(b)) return false;
    value = value * 10 + b - 0x30;
    digits++;
  }
  if (digits === 0 || digits > 4) return false;
  const minutes = digits <= 2 ? value * 60 : Math.trunc(value / 100) * 60 + (value % 100);
  if (minutes > 900 || (digits > 2 && value % 100 > 59)) out.flags |= CLOCK_FLAGS.impossible;
  else out.offset = bytes[from] === 0x2d ? -minutes : minutes;
  return true;
}

import { bytesOf } from '../../bytes/text.ts';
import { DAY_MS, MINUTE_MS } from '../../time/calendar.ts';
import { NO_OFFSET } from '../../time/offset.ts';
import { CLOCK_FLAGS } from './clockCell.ts';
import { readStamp } from './dates.ts';
import { dayNumber } from './dayOrder.ts';
import { newStamp, SHAPE } from './stamp.ts';

const FIRST_DAY = dayNumber(1999, 1, 1);
const stamp = newStamp();

/** A time as an exchange format writes it (RFC 3339), or why it cannot be used. */
export type WrittenTime =
  | { ok: true; wall: number; offset: number; timed: boolean; zone: string }
  | { ok: false; code: 'no-time' | 'time-unreadable' | 'date-impossible' | 'clock-not-set' | 'date-in-future' };

/** Reads `2026-01-14T12:00:00+02:00` or a plain date. The wall clock is the one written, beside its offset. */
export function readWritten(text: string, today: string): WrittenTime {
  if (text === '') return { ok: false, code: 'no-time' };
  const bytes = bytesOf(text);
  const shape = readStamp(bytes, 0, bytes.length, stamp);
  if ((shape !== SHAPE.stamp && shape !== SHAPE.day) || stamp.open) return { ok: false, code: 'time-unreadable' };
  const day = dayNumber(stamp.date >>> 9, (stamp.date >>> 5) & 15, stamp.date & 31);
  if (Number.isNaN(day) || stamp.flags & CLOCK_FLAGS.impossible) return { ok: false, code: 'date-impossible' };
  if (day < FIRST_DAY) return { ok: false, code: 'clock-not-set' };
  if (day * DAY_MS > Date.parse(`${today}T00:00:00Z`) + DAY_MS) return { ok: false, code: 'date-in-future' };
  const timed = shape === SHAPE.stamp;
  return {
    ok: true,
    wall: day * DAY_MS + (timed ? stamp.ms : 0),
    offset: timed ? stamp.offset : NO_OFFSET,
    timed,
    zone: timed ? stamp.zone : '',
  };
}

/** Minutes from one written time to another; undefined when either cannot be read. */
export function minutesBetween(from: string, to: string, today: string): number | undefined {
  const [a, b] = [readWritten(from, today), readWritten(to, today)];
  if (!a.ok || !b.ok || !a.timed || !b.timed) return undefined;
  const shift = (a.offset === NO_OFFSET ? 0 : a.offset) - (b.offset === NO_OFFSET ? 0 : b.offset);
  const minutes = (b.wall - a.wall) / MINUTE_MS + shift;
  return minutes > 0 ? minutes : undefined;
}

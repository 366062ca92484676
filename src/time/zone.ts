import { DAY_MS, MINUTE_MS } from './calendar.ts';
import type { LocalClock } from './clock.ts';

/*
 * Zone rules come from the runtime's own IANA data (ECMA-402), asked for a handful of instants per run: the changes of
 * a stretch of time are found by bisection and become pieces of a LocalClock. A general date library is not used for
 * this: the one we looked at decides a doubled hour by the date on which the program runs.
 */

/** The shortest an offset has held since 1990 is a week less an hour (northern Brazil, October 2000). */
const PROBE_MS = 5 * DAY_MS;

/** Stretches are cut to these years, so that a hostile date cannot make the search long. */
const FIRST = Date.UTC(1990, 0, 1);
const LAST = Date.UTC(2100, 0, 1);

const formats = new Map<string, Intl.DateTimeFormat>();

/**
 * Whether the name is an IANA zone of the form Area/Place, or UTC. Abbreviations (EST, IST: several places claim them)
 * and fixed offsets (Etc/GMT+3, whose sign is reversed) say nothing of the wearer's clock and are not zones here.
 */
export function isZone(name: string): boolean {
  if (name !== 'UTC' && (!/^[A-Z]\w+(\/[A-Z][\w+-]+)+$/.test(name) || /^etc\//i.test(name))) return false;
  try {
    formatOf(name);
    return true;
  } catch {
    return false;
  }
}

/** The clock of a zone, right from `from` to `to` (instants); outside, the nearest offset is carried on. @throws RangeError for an unknown zone. */
export function zoneClock(name: string, from: number, to: number): LocalClock {
  const format = formatOf(name);
  const start = floorToMinute(Math.min(Math.max(from, FIRST), LAST));
  const end = Math.min(Math.max(to, start), LAST);
  const clock: LocalClock = { from: [Number.NEGATIVE_INFINITY], offset: [offsetAt(format, start)] };
  let known = start;
  let offset = clock.offset[0]!;
  while (known < end) {
    const probe = known + PROBE_MS;
    const next = offsetAt(format, probe);
    if (next !== offset) {
      clock.from.push(changeBetween(format, known, probe, offset));
      clock.offset.push(next);
    }
    known = probe;
    offset = next;
  }
  return clock;
}

/** First minute of (`before`, `after`] whose offset is no longer `offset`. Offsets change on whole minutes. */
function changeBetween(format: Intl.DateTimeFormat, before: number, after: number, offset: number): number {
  let low = before;
  let high = after;
  while (high - low > MINUTE_MS) {
    const middle = floorToMinute((low + high) / 2);
    if (offsetAt(format, middle) === offset) low = middle;
    else high = middle;
  }
  return high;
}

/** Milliseconds to add to an instant for the wall clock; read from `GMT+05:45`, the only part with a sign and colon. */
function offsetAt(format: Intl.DateTimeFormat, at: number): number {
  const found = /GMT([+-])(\d\d):(\d\d)(?::(\d\d))?/.exec(format.format(at));
  if (!found) return 0;
  const seconds = Number(found[2]) * 3600 + Number(found[3]) * 60 + Number(found[4] ?? 0);
  return (found[1] === '-' ? -seconds : seconds) * 1000;
}

function formatOf(name: string): Intl.DateTimeFormat {
  let format = formats.get(name);
  if (!format) {
    format = new Intl.DateTimeFormat('en-US', { timeZone: name, timeZoneName: 'longOffset' });
    formats.set(name, format);
  }
  return format;
}

function floorToMinute(at: number): number {
  return Math.floor(at / MINUTE_MS) * MINUTE_MS;
}

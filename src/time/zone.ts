import { IANAZone } from 'luxon';
import { DAY_MS, MINUTE_MS } from './calendar.ts';
import type { LocalClock } from './clock.ts';

/*
 * Luxon answers what a zone's offset is at an instant, for a handful of instants a run: the changes of a stretch of
 * time are found by bisection and become pieces of a LocalClock, so that a reading costs one addition. Luxon is never
 * asked what a wall clock means: it decides a doubled hour by the date on which the program runs.
 */

/** The shortest an offset has held since 1990 is a week less an hour (northern Brazil, October 2000). */
const PROBE_MS = 5 * DAY_MS;

/** Stretches are cut to these years, so that a hostile date cannot make the search long. */
const FIRST = Date.UTC(1990, 0, 1);
const LAST = Date.UTC(2100, 0, 1);

/**
 * Whether the name is an IANA zone of the form Area/Place, or UTC. Abbreviations (EST, IST: several places claim them)
 * and fixed offsets (Etc/GMT+3, whose sign is reversed) say nothing of the wearer's clock and are not zones here.
 */
export function isZone(name: string): boolean {
  if (name !== 'UTC' && (!/^[A-Z]\w+(\/[A-Z][\w+-]+)+$/.test(name) || /^etc\//i.test(name))) return false;
  return IANAZone.isValidZone(name);
}

/** The clock of a zone, right from `from` to `to` (instants); outside, the nearest offset is carried on. @throws RangeError for an unknown zone. */
export function zoneClock(name: string, from: number, to: number): LocalClock {
  if (!isZone(name)) throw new RangeError(`Unknown zone: ${name}`);
  const zone = IANAZone.create(name);
  const start = floorToMinute(Math.min(Math.max(from, FIRST), LAST));
  const end = Math.min(Math.max(to, start), LAST);
  const clock: LocalClock = { from: [Number.NEGATIVE_INFINITY], offset: [offsetAt(zone, start)] };
  let known = start;
  let offset = clock.offset[0]!;
  while (known < end) {
    const probe = known + PROBE_MS;
    const next = offsetAt(zone, probe);
    if (next !== offset) {
      clock.from.push(changeBetween(zone, known, probe, offset));
      clock.offset.push(next);
    }
    known = probe;
    offset = next;
  }
  return clock;
}

/** First minute of (`before`, `after`] whose offset is no longer `offset`. Offsets change on whole minutes. */
function changeBetween(zone: IANAZone, before: number, after: number, offset: number): number {
  let low = before;
  let high = after;
  while (high - low > MINUTE_MS) {
    const middle = floorToMinute((low + high) / 2);
    if (offsetAt(zone, middle) === offset) low = middle;
    else high = middle;
  }
  return high;
}

/** Milliseconds to add to an instant for the wall clock. */
function offsetAt(zone: IANAZone, at: number): number {
  return Math.round(zone.offset(at) * MINUTE_MS);
}

function floorToMinute(at: number): number {
  return Math.floor(at / MINUTE_MS) * MINUTE_MS;
}

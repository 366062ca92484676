import type { Instant, LocalDate } from '../model/glucose.ts';
import type { Issue } from '../model/input.ts';
import type { PeriodChoice } from '../model/settings.ts';
import type { Day } from '../model/timeline.ts';
import {
  addDays,
  DAY_MS,
  dateOf,
  daysBetween,
  isLocalDate,
  MINUTE_MS,
  midnightBefore,
  midnightOf,
  weekdayOf,
} from '../time/calendar.ts';
import { firstInstantFrom, type LocalClock, wallAt } from '../time/clock.ts';
import { firstNotBefore, type Pool } from './pool.ts';

/** A hundred years: longer periods are a slip of the pen. */
const MOST_DAYS = 36_525;

/** Days looked at where nobody chose. */
export const DEFAULT_DAYS = 14;

/** Dates that hold at least one reading, ascending. A day begins at its first instant and ends where the next begins. */
export function datesWithReadings(pool: Pool, clock: LocalClock): LocalDate[] {
  const dates: LocalDate[] = [];
  let next = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < pool.count; k++) {
    const at = pool.at[k]!;
    if (at < next) continue;
    let midnight = midnightBefore(wallAt(clock, at));
    // Where the clock went back over midnight, the instant belongs to the later day, which has begun already.
    while (firstInstantFrom(clock, midnight + DAY_MS) <= at) midnight += DAY_MS;
    dates.push(dateOf(midnight));
    next = firstInstantFrom(clock, midnight + DAY_MS);
  }
  return dates;
}

/**
 * The days to look at. Without a choice: 14 calendar days, the last of them the last day that holds a reading.
 * `days` counts back from that same day. An open start means 14 days, an open end the last day that holds a reading.
 */
export function choosePeriod(
  dates: LocalDate[],
  choice: PeriodChoice | undefined,
): { from: LocalDate; to: LocalDate } | Issue {
  const last = dates.at(-1)!;
  const wrong = (actual: string, by: 'dates' | 'days' = 'dates'): Issue => ({
    code: 'bad-period',
    level: 'refusal',
    actual,
    question: { of: 'period', by },
  });
  if (choice && 'days' in choice) {
    const { days } = choice;
    if (!Number.isInteger(days) || days < 1 || days > MOST_DAYS) return wrong(`${days}`, 'days');
    return { from: addDays(last, 1 - days), to: last };
  }
  const to = choice?.to ?? (choice?.from !== undefined && choice.from > last ? choice.from : last);
  if (!isLocalDate(to)) return wrong(to.slice(0, 120));
  const from = choice?.from ?? addDays(to, 1 - DEFAULT_DAYS);
  if (!isLocalDate(from)) return wrong(from.slice(0, 120));
  if (from > to || daysBetween(from, to) >= MOST_DAYS) return wrong(`${from} / ${to}`);
  return { from, to };
}

/** One entry a calendar day, with the readings in it. Days that a zone left out (date line) are left out. */
export function makeDays(from: LocalDate, to: LocalDate, clock: LocalClock, pool: Pool): Day[] {
  const days: Day[] = [];
  const end = midnightOf(to);
  let first = -1;
  let index = 0;
  for (let midnight = midnightOf(from); midnight <= end; midnight += DAY_MS) {
    const start = firstInstantFrom(clock, midnight);
    const stop = firstInstantFrom(clock, midnight + DAY_MS);
    if (stop <= start) continue;
    if (first < 0) {
      first = firstNotBefore(pool, start);
      index = first;
    }
    const begin = index;
    while (index < pool.count && pool.at[index]! < stop) index++;
    days.push({
      date: dateOf(midnight),
      weekday: weekdayOf(dateOf(midnight)),
      start: start as Instant,
      minutes: (stop - start) / MINUTE_MS,
      from: begin - first,
      to: index - first,
    });
  }
  return days;
}

import { statisticOf } from '../comparing/statistics.ts';
import { isFull, NEEDED_DAYS, SMALLEST } from '../comparing/thenAndNow.ts';
import type { DaySums, PeriodSums } from '../model/thenAndNow.ts';
import type { VisitTrend } from '../model/visits.ts';
import { errorOf, neighbours } from '../stats/dayError.ts';
import { influence } from '../stats/dayStatistic.ts';
import { studentQuantile } from '../stats/distributions.ts';
import { square } from '../stats/elementary.ts';
import { DAY_MS, midnightOf } from '../time/calendar.ts';

/** With two visits a trend would be their difference under another name. */
export const LEAST_VISITS = 3;
export const LEVEL = 0.95;
/** A line is told in points a 30 days. */
const MONTH = 30;

/**
 * One line through time in range, visit by visit: least squares, each visit by its days. Its error comes from how days differ
 * within visits, widened for neighbours that resemble each other (`stats/dayError.ts`, as for two periods), and by how far the
 * visits lie off the line where that is more (the ratio of Birge 1932, Phys Rev 40:207-227, from memory); Student's t with
 * Welch's degrees of freedom. Told as more than noise where the interval leaves out 0 and the line moves by 5 points from the
 * first visit to the last. `tests/visits/simulate.ts` holds its false alarms and its power.
 */
export function trendOf(visits: readonly PeriodSums[]): VisitTrend {
  if (visits.length < LEAST_VISITS) return { case: 'none', why: 'two-visits' };
  const seen = daysOnce(visits).filter((days) => days.filter(isFull).length >= NEEDED_DAYS);
  if (seen.length < LEAST_VISITS) return { case: 'none', why: 'few-days' };
  const points = seen.map((days) => ({
    pull: influence(statisticOf('in-range', days)),
    place: Int32Array.from(days, ({ date }) => midnightOf(date) / DAY_MS),
  }));
  const correlation = neighbours(points.map(({ pull, place }) => ({ pull: pull.perDay, place })));
  const all = points.map(({ pull, place }) => ({
    at: place.reduce((sum, day) => sum + day, 0) / place.length,
    value: pull.value,
    weight: place.length,
    ...errorOf(pull.perDay, correlation),
  }));
  const weights = all.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (one: (typeof all)[number]) => number) =>
    all.reduce((sum, one) => sum + one.weight * of(one), 0) / weights;
  const [middle, level] = [mean(({ at }) => at), mean(({ value }) => value)];
  const spread = all.reduce((sum, { at, weight }) => sum + weight * square(at - middle), 0);
  const slope = all.reduce((sum, { at, weight, value }) => sum + weight * (at - middle) * value, 0) / spread;
  const parts = all.map(({ at, weight, variance, degrees }) => ({
    variance: square((weight * (at - middle)) / spread) * variance,
    degrees,
  }));
  const variance = parts.reduce((sum, one) => sum + one.variance, 0);
  if (!(variance > 0) || all.some((one) => !(one.variance > 0))) return { case: 'none', why: 'all-alike' };
  const off = all.reduce(
    (sum, { at, value, variance: own }) => sum + square(value - level - slope * (at - middle)) / own,
    0,
  );
  const scatter = Math.max(1, off / (all.length - 2));
  const degrees = square(variance) / parts.reduce((sum, one) => sum + square(one.variance) / one.degrees, 0);
  const reach = studentQuantile((1 + LEVEL) / 2, Math.max(2, Math.floor(degrees))) * Math.sqrt(variance * scatter);
  const moved = Math.abs(slope) * (all.at(-1)!.at - all[0]!.at);
  const sure = Math.abs(slope) > reach;
  return {
    case: 'line',
    per30Days: slope * MONTH,
    low: (slope - reach) * MONTH,
    high: (slope + reach) * MONTH,
    visits: all.length,
    verdict: sure && moved >= SMALLEST['in-range'] ? 'more-than-noise' : 'not-told-apart',
  };
}

/** Days with readings of each visit; a day of two visits counts in the later one. */
function daysOnce(visits: readonly PeriodSums[]): DaySums[][] {
  const taken = new Set<string>();
  return visits
    .toReversed()
    .map(({ days }) => {
      const own = days.filter(({ date, minutes }) => minutes > 0 && !taken.has(date));
      for (const { date } of own) taken.add(date);
      return own;
    })
    .reverse();
}

import type { Estimate } from '../model/measured.ts';
import { ratioIntervals } from '../stats/resample.ts';
import { type Context, SEEN_SHARE } from './context.ts';

export const LEVEL = 0.95;
export const WHOLE_DAYS = 'whole-day-resampling';

/** Days with at least 70 % of their minutes that an interval asks for. */
export const INTERVAL_DAYS = 10;

/**
 * Ratios of sums over days with their intervals. All arrays have one entry a day of the timeline; days whose
 * denominator is 0 are left out. At least one day must have a denominator.
 */
export function estimates(shared: Context, numerators: readonly Float64Array[], denominator: Float64Array): Estimate[] {
  const days: number[] = [];
  denominator.forEach((minutes, day) => {
    if (minutes > 0) days.push(day);
  });
  const pick = (perDay: Float64Array) => Float64Array.from(days, (day) => perDay[day]!);
  const bottoms = pick(denominator);
  const tops = numerators.map(pick);
  const intervals =
    fullDays(shared) < INTERVAL_DAYS ? null : ratioIntervals(shared.draws(days.length), tops, bottoms, LEVEL);
  const bottom = bottoms.reduce(sum, 0);
  return tops.map((top, i) => ({
    value: top.reduce(sum, 0) / bottom,
    low: intervals?.[i]?.low ?? null,
    high: intervals?.[i]?.high ?? null,
    level: LEVEL,
    method: WHOLE_DAYS,
    days: days.length,
  }));
}

export function fullDays(shared: Context): number {
  return shared.dayShares.reduce((full, share) => full + (share >= SEEN_SHARE ? 1 : 0), 0);
}

function sum(a: number, b: number): number {
  return a + b;
}

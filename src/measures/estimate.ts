import type { Estimate } from '../model/measured.ts';
import { type Bottoms, bottoms, ratioInterval, type Scale } from '../stats/interval.ts';
import { drawDays } from '../stats/resample.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import type { Context } from './context.ts';

export const LEVEL = 0.95;
export const DRAWS = 2000;
export const WHOLE_DAYS = 'whole-day-resampling';

/** Days with at least 70 % of their minutes that an interval asks for. */
export const INTERVAL_DAYS = 10;

export const SEED = 20190608;

/** Denominators by day, cut down to the days that have any. */
export interface Basis {
  days: number[];
  total: number;
  bottoms: Bottoms | null;
}

/**
 * A ratio of sums over days with its interval. Both columns have one entry a day of the timeline; days whose
 * denominator is 0 are left out, and at least one must have some.
 */
export function estimate(shared: Context, top: Float64Array, bottom: Float64Array, scale: Scale): Estimate {
  const { days, total, bottoms: denominators } = basisOf(shared, bottom);
  const tops = Float64Array.from(days, (day) => top[day]!);
  const interval = denominators && ratioInterval(tops, denominators, scale);
  return {
    value: tops.reduce(sum, 0) / total,
    low: interval?.low ?? null,
    high: interval?.high ?? null,
    level: LEVEL,
    method: WHOLE_DAYS,
    days: days.length,
  };
}

function basisOf(shared: Context, bottom: Float64Array): Basis {
  const known = shared.bases.get(bottom);
  if (known) return known;
  const days: number[] = [];
  bottom.forEach((minutes, day) => {
    if (minutes > 0) days.push(day);
  });
  const perDay = Float64Array.from(days, (day) => bottom[day]!);
  const drawn = fullDays(shared) >= INTERVAL_DAYS ? bottoms(perDay, drawDays(days.length, DRAWS, SEED, LEVEL)) : null;
  const basis = { days, total: perDay.reduce(sum, 0), bottoms: drawn };
  shared.bases.set(bottom, basis);
  return basis;
}

export function fullDays(shared: Context): number {
  return shared.dayShares.reduce((full, share) => full + (share >= SEEN_SHARE ? 1 : 0), 0);
}

function sum(a: number, b: number): number {
  return a + b;
}

import type { Band, Limits } from '../model/targets.ts';

/** Bands from the bottom up; `bandOf` gives an index into it. */
export const BANDS: readonly Band[] = ['very-low', 'low', 'in-range', 'high', 'very-high'];

export const VERY_LOW = 0;
export const LOW = 1;
export const IN_RANGE = 2;
export const HIGH = 3;
export const VERY_HIGH = 4;

/**
 * Band of a value in the unit of `limits`. Edges for real values as in Holt 2021 (Diabetes Care 44:2589-2625,
 * PMC8481000, table 1): a value at the low or the high limit is in range, one at an outer limit is level 1.
 */
export function bandOf(value: number, limits: Limits): number {
  if (value < limits.low) return value < limits.veryLow ? VERY_LOW : LOW;
  if (value <= limits.high) return IN_RANGE;
  return limits.veryHigh !== null && value > limits.veryHigh ? VERY_HIGH : HIGH;
}

/**
 * Band of a reading at the sensor's limit: everything just beyond `bound`. An unknown bound (NaN) lies in the
 * outermost band, since sensors report well into it (common practice, no source).
 */
export function bandBeyond(side: -1 | 1, bound: number, limits: Limits): number {
  if (side < 0) {
    if (!(bound > limits.veryLow)) return VERY_LOW;
    return bound <= limits.low ? LOW : bandOf(bound, limits);
  }
  if (limits.veryHigh !== null && !(bound < limits.veryHigh)) return VERY_HIGH;
  return bound < limits.high ? bandOf(bound, limits) : HIGH;
}

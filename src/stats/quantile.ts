import { quantileSorted } from 'd3-array';

/** Says how percentiles are made, for the reader of the report. */
export const QUANTILE_METHOD = 'type-7';

/**
 * The p-quantile (0 to 1) of values sorted ascending and free of NaN: type 7 of Hyndman & Fan 1996, Am Stat
 * 50:361-365, index (n - 1) p with linear interpolation. `values` must hold at least one.
 */
export function quantile(values: Float64Array, p: number): number {
  // The library's types know plain arrays only; it reads by index, so a typed array does as well and sorts faster.
  return quantileSorted(values as unknown as number[], p) as number;
}

/** Median of values in any order, at least one; the input is left as it is. */
export function median(values: readonly number[]): number {
  return quantile(Float64Array.from(values).sort(), 0.5);
}

import { chance } from './chance.ts';
import { normalCdf, studentQuantile } from './distributions.ts';

/** Whole days drawn with replacement, `count` times `days` of them, one draw after the other. */
export interface Draws {
  days: number;
  count: number;
  picks: Uint16Array;
}

/** Lower and upper end of an interval. */
export interface Interval {
  low: number;
  high: number;
}

/** Draws whole days, so that what belongs together (a night, a day of food) stays together. */
export function drawDays(days: number, count: number, seed: number): Draws {
  const next = chance(seed);
  const picks = new Uint16Array(days * count);
  for (let i = 0; i < picks.length; i++) picks[i] = (next() * days) | 0;
  return { days, count, picks };
}

/**
 * Probability to cut off at each end. The plain percentile interval is too narrow for few days: this is the
 * "expanded percentile" of Hesterberg 2015 (Am Stat 69:371-386, from memory), which answers for the t distribution
 * and for the n - 1 in the variance.
 */
export function expandedTail(days: number, level: number): number {
  const t = studentQuantile((1 + level) / 2, days - 1);
  return normalCdf(-t * Math.sqrt(days / (days - 1)));
}

/**
 * Intervals for ratios of sums over days (share of time = minutes in band / minutes with readings), all from the
 * same draws. Every day's denominator must be above 0. Null where all draws agree: days without any spread say
 * nothing about how far off the next fortnight may be.
 */
export function ratioIntervals(
  draws: Draws,
  numerators: readonly Float64Array[],
  denominator: Float64Array,
  level: number,
): (Interval | null)[] {
  const tail = expandedTail(draws.days, level);
  const bottoms = drawnSums(draws, denominator);
  return numerators.map((numerator) => {
    const ratios = drawnSums(draws, numerator);
    for (let draw = 0; draw < draws.count; draw++) ratios[draw] = ratios[draw]! / bottoms[draw]!;
    const low = orderStatistic(ratios, tail);
    const high = orderStatistic(ratios, 1 - tail);
    return low === high ? null : { low, high };
  });
}

function drawnSums({ days, count, picks }: Draws, perDay: Float64Array): Float64Array {
  const sums = new Float64Array(count);
  let at = 0;
  for (let draw = 0; draw < count; draw++) {
    let sum = 0;
    for (const end = at + days; at < end; at++) sum += perDay[picks[at]!]!;
    sums[draw] = sum;
  }
  return sums;
}

/** Type 7 quantile without sorting everything; reorders `values`. */
function orderStatistic(values: Float64Array, p: number): number {
  const position = (values.length - 1) * p;
  const k = Math.floor(position);
  select(values, k);
  const below = values[k]!;
  if (k === position) return below;
  let above = values[k + 1]!;
  for (let i = k + 2; i < values.length; i++) if (values[i]! < above) above = values[i]!;
  return below + (above - below) * (position - k);
}

/** Hoare's selection: afterwards values[k] is the k-th smallest, with none larger before it. */
function select(values: Float64Array, k: number): void {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const swap = values[i]!;
        values[i++] = values[j]!;
        values[j--] = swap;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else return;
  }
}

import { total } from './dayStatistic.ts';
import { exp, square } from './elementary.ts';
import { type Draws, drawnEnds, drawnSums } from './resample.ts';

/** Lower and upper end of an interval. */
export interface Interval {
  low: number;
  high: number;
}

/** `share`: a ratio that cannot leave 0 to 1. `positive`: one that cannot go below 0. */
export type Scale = 'share' | 'positive';

/** A column of denominators, one a day, with its draws: made once for all ratios over it. */
export interface Bottoms {
  perDay: Float64Array;
  total: number;
  draws: Draws;
  drawn: Float64Array;
}

export function bottoms(perDay: Float64Array, draws: Draws): Bottoms {
  return { perDay, total: total(perDay), draws, drawn: drawnSums(draws, perDay) };
}

/**
 * Interval of a ratio of sums over days (share of time = minutes in a band / minutes with readings): at each end the
 * wider of two. (1) Whole days drawn again, expanded percentile. (2) The day-to-day standard error with Student's t,
 * widened because days resemble their neighbours, on the logit (share) or log scale. Ours: drawing alone sets the upper
 * end too low for times that are rare and uneven, such as lows; tests/stats/interval.test.ts shows how often both hold.
 * Null when the days do not differ, which includes a share of exactly 0 or 1: they say nothing about how far off another
 * fortnight may be.
 */
export function ratioInterval(
  tops: Float64Array,
  { perDay, total: bottom, draws, drawn }: Bottoms,
  scale: Scale,
): Interval | null {
  const ratio = total(tops) / bottom;
  const error = ratioError(tops, perDay, ratio) / bottom;
  if (ratio <= 0 || (scale === 'share' && ratio >= 1) || error <= 1e-12 * ratio) return null;
  const again = drawnEnds(draws, tops, drawn);
  const reach = draws.reach * error;
  const around = scale === 'share' ? aroundShare(ratio, reach) : aroundPositive(ratio, reach);
  return { low: Math.max(0, Math.min(again.low, around.low)), high: Math.max(again.high, around.high) };
}

/** Standard error of the sum of tops around ratio x bottoms (linearised ratio estimator, Cochran 1977, ch. 6). */
function ratioError(tops: Float64Array, perDay: Float64Array, ratio: number): number {
  const days = tops.length;
  let squares = 0;
  for (let day = 0; day < days; day++) squares += square(tops[day]! - ratio * perDay[day]!);
  return Math.sqrt((squares * days) / (days - 1));
}

function aroundShare(ratio: number, reach: number): Interval {
  const odds = ratio / (1 - ratio);
  const factor = exp(reach / (ratio * (1 - ratio)));
  return { low: odds / (odds + factor), high: 1 / (1 + 1 / (odds * factor)) };
}

/** Ends on the log scale, for a number that cannot go below 0. */
export function aroundPositive(ratio: number, reach: number): Interval {
  const factor = exp(reach / ratio);
  return { low: ratio / factor, high: ratio * factor };
}

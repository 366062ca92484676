import { alikeDays, LIKENESS } from './alike.ts';
import { chance } from './chance.ts';
import { normalCdf, studentQuantile } from './distributions.ts';

/** Whole days drawn with replacement, `count` times `days` of them. */
export interface Draws {
  days: number;
  count: number;
  /**
   * The days of one draw after the other, taken two at a time, as first * (days + 1) + second: a table of the sums of
   * all pairs halves the additions. An odd draw ends with `days` as its second, which stands for no day.
   */
  pairs: Uint32Array;
  /** So many day-to-day standard errors an interval reaches: Student's t, and more because days resemble their neighbours. */
  reach: number;
  /** What is cut off at each end of the drawn ratios. */
  tail: number;
}

let last: { key: string; draws: Draws } | null = null;

/**
 * Draws whole days, so that what belongs together (a night, a day of food) stays together. A pure function of its
 * arguments; the last result is kept, because a clinic's reports nearly all ask for the same fortnight.
 */
export function drawDays(days: number, count: number, seed: number, level: number): Draws {
  const key = `${days} ${count} ${seed} ${level}`;
  if (last?.key !== key) {
    const tail = expandedTail(days, studentQuantile((1 + level) / 2, days - 1));
    const { times, degrees } = alikeDays(days, LIKENESS);
    const reach = studentQuantile((1 + level) / 2, Math.max(1, Math.round(degrees))) * Math.sqrt(times);
    last = { key, draws: { days, count, pairs: drawPairs(days, count, seed), reach, tail } };
  }
  return last.draws;
}

function drawPairs(days: number, count: number, seed: number): Uint32Array {
  const next = chance(seed);
  const perDraw = Math.ceil(days / 2);
  const pairs = new Uint32Array(perDraw * count);
  for (let i = 0; i < pairs.length; i++) {
    const alone = days % 2 === 1 && i % perDraw === perDraw - 1;
    pairs[i] = Math.floor(next() * days) * (days + 1) + (alone ? days : Math.floor(next() * days));
  }
  return pairs;
}

/**
 * Probability to cut off at each end. The plain percentile interval is too narrow for few days: this is the
 * "expanded percentile" of Hesterberg 2015 (Am Stat 69:371-386, from memory), which answers for the t distribution
 * and for the n - 1 in the variance.
 */
export function expandedTail(days: number, t: number): number {
  return normalCdf(-t * Math.sqrt(days / (days - 1)));
}

/** Sums of a per-day column over each draw, into `sums` when given. */
export function drawnSums(
  { days, count, pairs }: Draws,
  perDay: Float64Array,
  sums = new Float64Array(count),
): Float64Array {
  const table = pairSums(perDay);
  const perDraw = Math.ceil(days / 2);
  let at = 0;
  for (let draw = 0; draw < count; draw++) {
    let sum = 0;
    for (const end = at + perDraw; at < end; at++) sum += table[pairs[at]!]!;
    sums[draw] = sum;
  }
  return sums;
}

function pairSums(perDay: Float64Array): Float64Array {
  const days = perDay.length;
  const table = new Float64Array(days * (days + 1));
  let cell = 0;
  for (let first = 0; first < days; first++) {
    for (let second = 0; second < days; second++) table[cell++] = perDay[first]! + perDay[second]!;
    table[cell++] = perDay[first]!;
  }
  return table;
}

/** Room for one column of draws, used and done with inside `drawnEnds`: new room for each costs more than the sums. */
let room = new Float64Array(0);

/** The two ends of the drawn ratios of a per-day column to `bottoms` at the draws' tails. Every bottom must be above 0. */
export function drawnEnds(draws: Draws, perDay: Float64Array, bottoms: Float64Array): { low: number; high: number } {
  if (room.length !== draws.count) room = new Float64Array(draws.count);
  const ratios = drawnSums(draws, perDay, room);
  for (let draw = 0; draw < draws.count; draw++) ratios[draw] = ratios[draw]! / bottoms[draw]!;
  return drawnQuantiles(draws, ratios);
}

/** The two ends of drawn values at the draws' tails; reorders `values`. */
export function drawnQuantiles({ tail }: Draws, values: Float64Array): { low: number; high: number } {
  // What the first leaves behind it holds nothing smaller: the second looks there only.
  const low = orderStatistic(values, tail);
  return { low, high: orderStatistic(values, 1 - tail, Math.floor((values.length - 1) * tail)) };
}

/** Type 7 quantile without sorting everything; reorders `values`. None before `from` may be larger than one behind. */
function orderStatistic(values: Float64Array, p: number, from = 0): number {
  const position = (values.length - 1) * p;
  const k = Math.floor(position);
  select(values, k, from);
  const below = values[k]!;
  if (k === position) return below;
  let above = values[k + 1]!;
  for (let i = k + 2; i < values.length; i++) if (values[i]! < above) above = values[i]!;
  return below + (above - below) * (position - k);
}

/** Hoare's selection: afterwards values[k] is the k-th smallest, with none larger before it. */
export function select(values: Float64Array, k: number, from = 0): void {
  let left = from;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[k]!;
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

import { chance } from './chance.ts';

/** So many random arrangements where not all can be counted, and up to so many are all counted. */
const DRAWN = 999;
const COUNTED = 2000;

/** Two groups compared by every way (or many ways) in which their labels could have fallen. */
export interface TwoGroups {
  /** Mean of the first minus mean of the second. */
  difference: number;
  /** Two-sided: share of arrangements at least as far apart. */
  p: number;
  /** The least p that groups of these sizes can give. */
  least: number;
  /** Ends of the 95 % interval of the difference: the arrangements' own critical t in place of Student's. */
  low: number;
  high: number;
}

/**
 * Permutation test of the difference in means (Fisher 1935; Pitman 1937), one value a day, so that what belongs to a
 * day stays together. All arrangements are counted where there are at most 2,000, else 999 are drawn with a fixed
 * seed and the observed one counts among them, which keeps the test exact (Phipson & Smyth 2010, Stat Appl Genet Mol
 * Biol 9:39). Both groups must hold at least one value, together at least three.
 */
export function compareGroups(first: readonly number[], second: readonly number[], seed: number): TwoGroups {
  const n = first.length + second.length;
  const k = Math.min(first.length, second.length);
  // The smaller group leads: its sum says all about an arrangement, as the values together stay the same.
  const all = Float64Array.from(first.length === k ? [...first, ...second] : [...second, ...first]);
  const mean = all.reduce((sum, value) => sum + value, 0) / n;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    all[i] = all[i]! - mean;
    squares += all[i]! * all[i]!;
  }
  const ways = choose(n, k);
  const reach = ways <= COUNTED ? everySum(all, k, ways) : drawnSums(all, k, seed);
  for (let i = 0; i < reach.length; i++) reach[i] = Math.abs(reach[i]!);
  reach.sort();
  let observed = 0;
  for (let i = 0; i < k; i++) observed += all[i]!;
  const drawn = ways <= COUNTED ? 0 : 1;
  const far = reach.length - firstAtLeast(reach, Math.abs(observed) - 1e-9 * Math.sqrt(squares)) + drawn;
  const arrangements = reach.length + drawn;
  const sign = first.length === k ? 1 : -1;
  const difference = sign * observed * (1 / k + 1 / (n - k));
  const critical = reach[Math.min(reach.length, Math.ceil(0.95 * arrangements)) - 1]!;
  const half = studentT(critical, squares, k, n) * standardError(observed, squares, k, n);
  return {
    difference,
    p: far / arrangements,
    least: drawn === 1 ? 1 / arrangements : (2 * k === n ? 2 : 1) / arrangements,
    low: difference - half,
    high: difference + half,
  };
}

/** Sum of squares inside the two groups, when the first sums to `sum` around a common mean of 0. */
const within = (sum: number, squares: number, k: number, n: number): number =>
  Math.max(0, squares - (sum * sum * n) / (k * (n - k)));

function standardError(sum: number, squares: number, k: number, n: number): number {
  return Math.sqrt((within(sum, squares, k, n) / (n - 2)) * (1 / k + 1 / (n - k)));
}

/** Values that lie all on one side or all alike leave no spread: a t beyond any use is cut there. */
function studentT(sum: number, squares: number, k: number, n: number): number {
  const error = standardError(sum, squares, k, n);
  if (error <= 1e-9 * Math.sqrt(squares)) return sum === 0 ? 0 : 1e3;
  return (sum * (1 / k + 1 / (n - k))) / error;
}

function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return Math.round(ways);
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function everySum(all: Float64Array, k: number, ways: number): Float64Array {
  const sums = new Float64Array(ways);
  let filled = 0;
  const pick = (from: number, left: number, sum: number): void => {
    if (left === 0) sums[filled++] = sum;
    else for (let i = from; i <= all.length - left; i++) pick(i + 1, left - 1, sum + all[i]!);
  };
  pick(0, k, 0);
  return sums;
}

function drawnSums(all: Float64Array, k: number, seed: number): Float64Array {
  const next = chance(seed);
  const n = all.length;
  const pool = all.slice();
  const sums = new Float64Array(DRAWN);
  for (let draw = 0; draw < DRAWN; draw++) {
    let sum = 0;
    for (let i = 0; i < k; i++) {
      const j = i + Math.floor(next() * (n - i));
      const value = pool[j]!;
      pool[j] = pool[i]!;
      pool[i] = value;
      sum += value;
    }
    sums[draw] = sum;
  }
  return sums;
}

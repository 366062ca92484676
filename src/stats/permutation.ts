import { chance } from './chance.ts';
import { select } from './resample.ts';

/** So many random arrangements where not all can be counted, and up to so many are all counted. */
const DRAWN = 999;
const COUNTED = 2000;
/** Of the interval. */
const LEVEL = 0.95;

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
  const reach = reaches(all, k, picksOf(n, k, seed));
  let observed = 0;
  for (let i = 0; i < k; i++) observed += all[i]!;
  const drawn = choose(n, k) <= COUNTED ? 0 : 1;
  const limit = Math.abs(observed) - 1e-9 * Math.sqrt(squares);
  let far = drawn;
  for (let i = 0; i < reach.length; i++) if (reach[i]! >= limit) far++;
  const arrangements = reach.length + drawn;
  const sign = first.length === k ? 1 : -1;
  const difference = sign * observed * (1 / k + 1 / (n - k));
  const rank = Math.min(reach.length, Math.ceil(LEVEL * arrangements)) - 1;
  select(reach, rank);
  const critical = reach[rank]!;
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

/** Which values each arrangement takes into the first group: `k` places a row. */
interface Picks {
  rows: number;
  places: Uint16Array;
}

const kept = new Map<string, Picks>();
const MOST_KEPT = 100;

/** A pure function of its arguments; what was made is kept, because logs of one length ask for the same again. */
function picksOf(n: number, k: number, seed: number): Picks {
  const key = `${n} ${k} ${seed}`;
  let picks = kept.get(key);
  if (!picks) {
    picks = choose(n, k) <= COUNTED ? everyPick(n, k) : drawnPicks(n, k, seed);
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(key, picks);
  }
  return picks;
}

function everyPick(n: number, k: number): Picks {
  const rows = choose(n, k);
  const places = new Uint16Array(rows * k);
  const row = Uint16Array.from({ length: k }, (_, i) => i);
  for (let at = 0; at < rows; at++) {
    places.set(row, at * k);
    let i = k - 1;
    while (i >= 0 && row[i] === n - k + i) i--;
    if (i < 0) break;
    row[i]! += 1;
    for (let j = i + 1; j < k; j++) row[j] = row[j - 1]! + 1;
  }
  return { rows, places };
}

function drawnPicks(n: number, k: number, seed: number): Picks {
  const next = chance(seed);
  const pool = Uint16Array.from({ length: n }, (_, i) => i);
  const places = new Uint16Array(DRAWN * k);
  for (let at = 0; at < places.length; at++) {
    const i = at % k;
    const j = i + Math.floor(next() * (n - i));
    const place = pool[j]!;
    pool[j] = pool[i]!;
    pool[i] = place;
    places[at] = place;
  }
  return { rows: DRAWN, places };
}

/** How far each arrangement's first group lies from its share of the total, either way. */
function reaches(all: Float64Array, k: number, { rows, places }: Picks): Float64Array {
  const found = new Float64Array(rows);
  let at = 0;
  for (let row = 0; row < rows; row++) {
    let sum = 0;
    for (const end = at + k; at < end; at++) sum += all[places[at]!]!;
    found[row] = Math.abs(sum);
  }
  return found;
}

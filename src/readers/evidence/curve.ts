import { select } from '../../stats/resample.ts';
import { MINUTE_MS } from '../../time/calendar.ts';

/** Rows this far apart are neighbours on a sensor's curve; most sensors store a value every 1 to 15 minutes. */
const NEIGHBOURS = 20 * MINUTE_MS;
/** So many values tell the quantiles of a series; more would only cost sorting. */
const SAMPLE = 2048;

/** What a series of values looks like over time, in its own unit. */
export interface Curve {
  n: number;
  low: number;
  high: number;
  p5: number;
  median: number;
  p95: number;
  /** Middle half of the values, end to end. */
  iqr: number;
  /** Neighbours in file order that stand 20 minutes apart at most. */
  pairs: number;
  /** Median change between them; NaN where there are none. */
  change: number;
  /** Values far from both neighbours, on one side, where these agree: what a dose among readings looks like. */
  jumps: number;
  /** The first of them, or -1. */
  jumpAt: number;
}

/** The curve of the numbers in file order; `wall` in ms. Not-a-number in either leaves a row out. Both have one length. */
export function curveOf(value: Float64Array, wall: Float64Array): Curve {
  const rows = value.length;
  let n = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let pairs = 0;
  let jumps = 0;
  let jumpAt = -1;
  // The last two rows that hold something: `b` is judged once the one behind it is known.
  let a = -1;
  let b = -1;
  for (let k = 0; k < rows; k++) {
    const here = value[k]!;
    if (Number.isNaN(here) || Number.isNaN(wall[k]!)) continue;
    n++;
    if (here < low) low = here;
    if (here > high) high = here;
    const near = b >= 0 && Math.abs(wall[k]! - wall[b]!) <= NEIGHBOURS;
    if (near) {
      pairs++;
      if (a >= 0 && Math.abs(wall[b]! - wall[a]!) <= NEIGHBOURS && isJump(value[a]!, value[b]!, here)) {
        if (jumps++ === 0) jumpAt = b;
      }
    }
    a = b;
    b = k;
  }
  const step = Math.max(1, Math.floor(rows / SAMPLE));
  const values: number[] = [];
  const changes: number[] = [];
  for (let k = 0; k < rows; k += step) {
    const here = value[k]!;
    if (Number.isNaN(here) || Number.isNaN(wall[k]!)) continue;
    values.push(here);
    let last = k - 1;
    while (last >= 0 && Number.isNaN(value[last]!)) last--;
    if (last >= 0 && Math.abs(wall[k]! - wall[last]!) <= NEIGHBOURS) changes.push(Math.abs(here - value[last]!));
  }
  const sample = Float64Array.from(values);
  const at = (share: number): number =>
    sample.length === 0 ? Number.NaN : nth(sample, Math.min(sample.length - 1, Math.floor(share * sample.length)));
  return {
    n,
    low,
    high,
    p5: at(0.05),
    median: at(0.5),
    p95: at(0.95),
    iqr: at(0.75) - at(0.25),
    pairs,
    change: middle(changes),
    jumps,
    jumpAt,
  };
}

/** Over a third and over 2 of its own size away from both neighbours, which lie within half of that of each other (ours). */
function isJump(before: number, here: number, after: number): boolean {
  const up = here - before;
  const down = here - after;
  if (up * down <= 0) return false;
  const far = Math.min(Math.abs(up), Math.abs(down));
  const size = Math.max(before, after);
  return far > size * 0.4 && Math.abs(before - after) < far / 2;
}

/** Upper median; NaN of nothing. */
export function middle(numbers: number[]): number {
  return numbers.length === 0 ? Number.NaN : nth(Float64Array.from(numbers), numbers.length >> 1);
}

/** The k-th smallest, from 0; parting the numbers about it costs a fraction of sorting them. */
function nth(numbers: Float64Array, k: number): number {
  select(numbers, k);
  return numbers[k]!;
}

/** So many neighbours tell a curve from scattered values (ours). */
const LEAST_PAIRS = 12;

/**
 * How rough a series is: the usual change between neighbours against the middle half of all values. 0.02 to 0.10 in eight
 * recordings of real sensors (tests/data/shared), 0.7 for numbers drawn at random. Undefined where too little stands side by side.
 */
export function roughness({ pairs, change, iqr }: Curve): number | undefined {
  if (pairs < LEAST_PAIRS || Number.isNaN(change)) return undefined;
  return iqr > 0 ? change / iqr : change === 0 ? 0 : Number.POSITIVE_INFINITY;
}

/** Rougher than this is no sensor's curve (ours; between the two kinds above). */
export const ROUGH = 0.4;

/** Whether neighbours follow each other as a sensor's do. */
export function isSmooth(curve: Curve): boolean {
  const rough = roughness(curve);
  return rough !== undefined && rough < ROUGH && curve.pairs * 2 >= curve.n;
}

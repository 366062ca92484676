import type { GlucoseUnit } from '../../model/glucose.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import { type Curve, ROUGH, roughness } from './curve.ts';

/** Fewer values than this are not judged as a series: they may be one night, or one hour. Two hours of five minutes (ours). */
const FEWEST = 24;
/**
 * Half of a person's readings below 54 or above 400 mg/dL, or nearly all below 70: no life at home looks so, a wrong unit does.
 * (54 and 70 are the consensus's low limits, 400 the top of most sensors; taking them as bounds of the middle is ours.)
 */
const MIDDLE = { low: 54, high: 400 };
const MOST_LOW = 70;
/** Values that jump out and back: from this many and this share on the series holds something else than readings (ours). */
const JUMPS = { least: 5, share: 0.01 };

export type Doubt =
  | { why: 'low' | 'high'; n: number; median: number; low: number; high: number }
  | { why: 'jumps'; n: number; jumps: number; at: number }
  | { why: 'rough'; n: number; change: number; iqr: number };

/** What a physiologist would object to in a series of readings in this unit; undefined: nothing. */
export function doubtOf(curve: Curve, unit: GlucoseUnit): Doubt | undefined {
  const { n, median, low, high, p95, jumps, jumpAt } = curve;
  if (n < FEWEST) return undefined;
  const size = unit === 'mg/dL' ? 1 : MGDL_PER_MMOL;
  if (median * size < MIDDLE.low || p95 * size < MOST_LOW) return { why: 'low', n, median, low, high };
  if (median * size > MIDDLE.high) return { why: 'high', n, median, low, high };
  const rough = roughness(curve);
  // A quiet day of a person without diabetes varies by little more than the sensor's own noise.
  if (rough !== undefined && rough > ROUGH && curve.change * size > 8)
    return { why: 'rough', n, change: curve.change, iqr: curve.iqr };
  if (jumps >= JUMPS.least && jumps >= n * JUMPS.share) return { why: 'jumps', n, jumps, at: jumpAt };
  return undefined;
}

import type { Timeline } from '../model/timeline.ts';
import { quantile } from '../stats/quantile.ts';
import { firstFrom } from '../stats/sorted.ts';
import { MINUTE_MS } from '../time/calendar.ts';

/** Middle and middle half of several occasions, so many minutes from their notes; null where fewer than three were seen. */
export interface ProfilePoint {
  minute: number;
  p25: number | null;
  p50: number | null;
  p75: number | null;
  n: number;
}

const LEAST = 3;

/** Lays occasions over one another at their notes, in steps of `step` minutes; a reading counts for the nearest step. */
export function profileOf(
  { readings }: Timeline,
  anchors: readonly number[],
  from: number,
  to: number,
  step: number,
): ProfilePoint[] {
  const steps = Math.floor((to - from) / step) + 1;
  const values: number[][] = Array.from({ length: steps }, () => []);
  for (const anchor of anchors) {
    const sums = new Float64Array(steps);
    const counts = new Uint16Array(steps);
    for (let i = firstFrom(readings.at, readings.count, anchor + from * MINUTE_MS); i < readings.count; i++) {
      const minute = (readings.at[i]! - anchor) / MINUTE_MS;
      if (minute > to) break;
      const value = readings.mgdl[i]!;
      if (Number.isNaN(value)) continue;
      const at = Math.round((minute - from) / step);
      if (at >= steps) continue;
      sums[at]! += value;
      counts[at]! += 1;
    }
    for (let at = 0; at < steps; at++) if (counts[at]! > 0) values[at]!.push(sums[at]! / counts[at]!);
  }
  return values.map((some, at) => {
    const sorted = Float64Array.from(some).sort();
    const pick = (p: number) => (sorted.length < LEAST ? null : quantile(sorted, p));
    return { minute: from + at * step, p25: pick(0.25), p50: pick(0.5), p75: pick(0.75), n: sorted.length };
  });
}

import { meanOf, sampleSd } from '../stats/moments.ts';
import type { Index } from './indexOf.ts';
import { fullDayValues } from './trace.ts';

/**
 * Mean amplitude of glycemic excursions of one run of values, unsmoothed: (1) turning points, plateaus at their first
 * value, ends included; (2) the smallest inner leg below 1 SD is taken out and its neighbours joined, until none is
 * left; (3) legs above 1 SD (4) in the direction of the first of them. Null when no leg is that long.
 */
export function mageOf(values: readonly number[]): number | null {
  if (values.length < 3) return null;
  const sd = sampleSd(values);
  const points = turningPoints(values);
  for (;;) {
    const smallest = smallestInner(points);
    if (smallest < 0 || Math.abs(points[smallest + 1]! - points[smallest]!) >= sd) break;
    points.splice(smallest, 2);
  }
  const legs = points.slice(1).map((point, i) => point - points[i]!);
  const long = legs.filter((leg) => Math.abs(leg) > sd);
  const first = long[0];
  if (first === undefined) return null;
  return meanOf(long.filter((leg) => leg > 0 === first > 0).map(Math.abs));
}

function turningPoints(values: readonly number[]): number[] {
  const points: number[] = [];
  for (const value of values) {
    const last = points.length - 1;
    if (last >= 0 && value === points[last]) continue;
    if (last >= 1 && value > points[last]! === points[last]! > points[last - 1]!) points.pop();
    points.push(value);
  }
  return points;
}

/** First point of the inner leg with the least amplitude; -1 when every leg touches an end. */
function smallestInner(points: readonly number[]): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i + 2 < points.length; i++) {
    const amplitude = Math.abs(points[i + 1]! - points[i]!);
    if (amplitude < least) {
      least = amplitude;
      best = i;
    }
  }
  return best;
}

/** Each full day with its own SD, then the mean over days. */
export const mage: Index<number> = {
  id: 'mage',
  source: 'Service 1970, Diabetes 19:644-655',
  unit: 'mg/dL',
  definition: { atLeastSd: 1 },
  compute(trace) {
    if (trace.mgdl.length === 0) return { ok: false, why: 'no-readings' };
    const days = fullDayValues(trace).flatMap((values) => mageOf(values) ?? []);
    if (days.length === 0) return { ok: false, why: 'too-few-days' };
    return { ok: true, value: meanOf(days), n: days.length, of: 'days' };
  },
};

import { meanOf, sampleSd } from '../stats/moments.ts';
import type { Index } from './indexOf.ts';
import type { Trace } from './trace.ts';

/**
 * Differences G(t) - G(t - apart), minutes; the earlier reading is the nearest within half an interval. With
 * `unbroken` only pairs inside one stretch without gaps.
 */
export function differences(
  { mgdl, minutes, stretch, interval }: Pick<Trace, 'mgdl' | 'minutes' | 'stretch' | 'interval'>,
  lag: number,
  unbroken: boolean,
): number[] {
  const found: number[] = [];
  let earlier = 0;
  for (let i = 0; i < mgdl.length; i++) {
    const wanted = minutes[i]! - lag;
    while (earlier + 1 < i && Math.abs(minutes[earlier + 1]! - wanted) <= Math.abs(minutes[earlier]! - wanted))
      earlier++;
    if (earlier === i || Math.abs(minutes[earlier]! - wanted) > interval / 2) continue;
    if (unbroken && stretch[earlier] !== stretch[i]) continue;
    found.push(mgdl[i]! - mgdl[earlier]!);
  }
  return found;
}

/** Mean of daily differences: readings 24 hours apart, whatever lies between. */
export const modd: Index<number> = {
  id: 'modd',
  source: 'Molnar 1972, Diabetologia 8:342-348',
  unit: 'mg/dL',
  definition: { apartMinutes: 1440 },
  compute(trace) {
    if (trace.mgdl.length === 0) return { ok: false, why: 'no-readings' };
    const found = differences(trace, 1440, false).map(Math.abs);
    if (found.length === 0) return { ok: false, why: 'too-few-days' };
    return { ok: true, value: meanOf(found), n: found.length, of: 'pairs' };
  },
};

export interface Conga {
  conga1: number;
  conga2: number;
  conga4: number;
}

/** Continuous overall net glycemic action: SD of differences 1, 2 and 4 hours apart, no gap between. */
export const conga: Index<Conga> = {
  id: 'conga',
  source: 'McDonnell 2005, Diabetes Technol Ther 7:253-263',
  unit: 'mg/dL',
  definition: { hours: '1, 2, 4' },
  compute(trace) {
    if (trace.mgdl.length === 0) return { ok: false, why: 'no-readings' };
    const [one, two, four] = [60, 120, 240].map((lag) => differences(trace, lag, true)) as [
      number[],
      number[],
      number[],
    ];
    if (four.length < 2) return { ok: false, why: 'too-few-readings' };
    const value = { conga1: sampleSd(one), conga2: sampleSd(two), conga4: sampleSd(four) };
    return { ok: true, value, n: four.length, of: 'pairs' };
  },
};

import type { MeanGlucose } from '../model/measures.ts';
import type { Context } from './context.ts';
import { estimate } from './estimate.ts';
import type { Measure } from './measure.ts';

/**
 * Mean sensor glucose, each reading weighted by the minutes it stands for. A reading at the sensor's limit counts
 * with the limit and makes the mean a bound; where the limit is unknown it is left out, and the mean still a bound.
 */
export const mean: Measure<'mean'> = {
  id: 'mean',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603; Daybands',
  needs: { readings: 1 },
  definition: {},
  compute(shared) {
    const { readings } = shared.timeline;
    const { sums, minutes, known, below, above } = daySums(shared);
    const censored = below + above;
    if (known === 0) return { ok: false, why: 'bound-unknown' };
    const mgdl = estimate(shared, sums, known === readings.count ? shared.dayMinutes : minutes, 'positive');
    return {
      ok: true,
      value: { mgdl, bounded: censored > 0, bound: boundOf(below, above), censored, below, above },
      n: known,
      of: 'readings',
    };
  },
};

export function boundOf(below: number, above: number): MeanGlucose['bound'] {
  if (below > 0 && above > 0) return 'both';
  if (above > 0) return 'lower';
  return below > 0 ? 'upper' : null;
}

function daySums({ timeline }: Context) {
  const { readings, days } = timeline;
  const sums = new Float64Array(days.length);
  const minutes = new Float64Array(days.length);
  let known = 0;
  let below = 0;
  let above = 0;
  for (let i = 0; i < readings.count; i++) {
    const limit = readings.limit[i]!;
    if (limit < 0) below++;
    else if (limit > 0) above++;
    const value = readings.mgdl[i]!;
    if (Number.isNaN(value)) continue;
    const day = readings.day[i]!;
    known++;
    sums[day] = sums[day]! + value * readings.weight[i]!;
    minutes[day] = minutes[day]! + readings.weight[i]!;
  }
  return { sums, minutes, known, below, above };
}

import type { HourShares } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import type { Measure } from './measure.ts';

/** Shares of each clock hour's readings in each band, over all days. */
export const hourly: Measure<'hourly'> = {
  id: 'hourly',
  source: 'Rodbard 2020, doi 10.1089/dia.2020.0524; Battelino 2019, Diabetes Care 42:1593-1603',
  needs: { readings: 1 },
  definition: {},
  compute(shared) {
    const { count, minute, weight, day } = shared.timeline.readings;
    const { bands } = shared;
    const minutes = new Float64Array(24 * 5);
    const days = new Uint16Array(24);
    const lastDay = new Int32Array(24).fill(-1);
    for (let i = 0; i < count; i++) {
      const hour = (minute[i]! / 60) | 0;
      const cell = hour * 5 + bands[i]!;
      minutes[cell] = minutes[cell]! + weight[i]!;
      if (lastDay[hour] !== day[i]) days[hour] = days[hour]! + 1;
      lastDay[hour] = day[i]!;
    }
    const value = Array.from(days, (held, hour) => oneHour(hour, held, minutes.subarray(hour * 5, hour * 5 + 5)));
    return { ok: true, value, n: count, of: 'readings' };
  },
};

function oneHour(hour: number, days: number, bands: Float64Array): HourShares {
  const minutes = bands.reduce((sum, each) => sum + each, 0);
  if (minutes === 0) return { hour, minutes, days, shares: null };
  const shares = Object.fromEntries(BANDS.map((band, b) => [band, bands[b]! / minutes]));
  return { hour, minutes, days, shares: shares as HourShares['shares'] };
}

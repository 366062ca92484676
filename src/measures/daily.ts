import type { BandMinutes, DailySummary } from '../model/measures.ts';
import { BANDS, IN_RANGE } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { mgPerDl } from '../units.ts';
import { type Context, heightAt, liesFurther, limitAt } from './context.ts';
import { boundOf } from './mean.ts';
import type { Measure } from './measure.ts';

/** Each calendar day in short. */
export const daily: Measure<'daily'> = {
  id: 'daily',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603',
  needs: { readings: 1 },
  definition: { fullShare: SEEN_SHARE },
  compute(shared) {
    const value = shared.timeline.days.map((_, day) => oneDay(shared, day));
    return { ok: true, value, n: value.length, of: 'days' };
  },
};

function oneDay(shared: Context, index: number): DailySummary {
  const { timeline, dayBands, dayMinutes, dayShares } = shared;
  const { readings } = timeline;
  const { date, from, to } = timeline.days[index]!;
  let sum = 0;
  let known = 0;
  let below = 0;
  let above = 0;
  let lowest = from;
  let highest = from;
  for (let i = from; i < to; i++) {
    const value = readings.mgdl[i]!;
    if (!Number.isNaN(value)) {
      sum += value * readings.weight[i]!;
      known += readings.weight[i]!;
    }
    if (readings.limit[i]! < 0) below++;
    if (readings.limit[i]! > 0) above++;
    if (liesFurther(shared, 'low', i, lowest)) lowest = i;
    if (liesFurther(shared, 'high', i, highest)) highest = i;
  }
  const none = to === from;
  return {
    date,
    share: dayShares[index]!,
    mean: known > 0 ? mgPerDl(sum / known) : null,
    lowest: none ? null : heightAt(shared, lowest),
    highest: none ? null : heightAt(shared, highest),
    limits: none ? { lowest: 0, highest: 0 } : { lowest: limitAt(shared, lowest), highest: limitAt(shared, highest) },
    bound: boundOf(below, above),
    minutes: Object.fromEntries(BANDS.map((band, b) => [band, dayBands[index * 5 + b]!])) as BandMinutes,
    inRange: none ? null : dayBands[index * 5 + IN_RANGE]! / dayMinutes[index]!,
    full: dayShares[index]! >= SEEN_SHARE,
  };
}

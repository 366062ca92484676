import type { Estimate } from '../model/measured.ts';
import type { BandMinutes } from '../model/measures.ts';
import type { Band, Goal } from '../model/targets.ts';
import { BANDS } from '../targets/bands.ts';
import type { Context } from './context.ts';
import { estimate, LEVEL, WHOLE_DAYS } from './estimate.ts';
import type { Measure } from './measure.ts';

/**
 * Shares of the time with readings. Missing time counts in no band. Goals on low and high are on the cumulative
 * shares, and compare unrounded values.
 */
export const timeInBands: Measure<'timeInBands'> = {
  id: 'timeInBands',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603; Holt 2021, Diabetes Care 44:2589-2625; Daybands',
  needs: { readings: 1 },
  definition: { level: LEVEL, method: WHOLE_DAYS },
  compute(shared) {
    const { readings } = shared.timeline;
    if (readings.count === 0) return { ok: false, why: 'no-readings' };
    const perDay = BANDS.map((_, band) => bandByDay(shared, band));
    const below = add(perDay[0]!, perDay[1]!);
    const above = add(perDay[3]!, perDay[4]!);
    const share = (minutes: Float64Array) => estimate(shared, minutes, shared.dayMinutes, 'share');
    const exclusive = Object.fromEntries(BANDS.map((band, i) => [band, share(perDay[i]!)])) as Record<Band, Estimate>;
    const minutes = Object.fromEntries(BANDS.map((band, i) => [band, perDay[i]!.reduce(sum, 0)])) as BandMinutes;
    const cumulative = { low: share(below), high: share(above) };
    const goals = shared.targets.goals.map((goal) => judge(goal, { ...exclusive, ...cumulative }));
    return { ok: true, value: { minutes, exclusive, cumulative, goals }, n: readings.count, of: 'readings' };
  },
};

function judge(goal: Goal, shares: Record<Band, Estimate>) {
  const { value } = shares[goal.of];
  return { ...goal, met: goal.op === '<' ? value < goal.share : value > goal.share };
}

function bandByDay({ dayBands, dayMinutes }: Context, band: number): Float64Array {
  return dayMinutes.map((_, day) => dayBands[day * 5 + band]!);
}

function add(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((minutes, day) => minutes + b[day]!);
}

function sum(a: number, b: number): number {
  return a + b;
}

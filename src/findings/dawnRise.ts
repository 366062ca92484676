import { median } from '../stats/quantile.ts';
import { isPattern, PATTERN_DAYS } from './evidence/pattern.ts';
import { count, often, rise } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LEAST_RISE = 20;

/** Glucose rose by 20 mg/dL or more from the night's lowest value to before breakfast, on a third of nights or more. */
export const dawnRise: Finding<'dawn-rise'> = {
  id: 'dawn-rise',
  source: 'Monnier 2013, Diabetes Care 36:4057-4062 (type 2; no agreed threshold elsewhere); how often: ours',
  look({ dawnRise }) {
    if (!dawnRise.ok) return untold(dawnRise.why);
    const { nights, leftOut } = dawnRise.value;
    if (nights.length < PATTERN_DAYS) return untold('too-few-nights');
    const risen = nights.filter((night) => night.rise >= LEAST_RISE);
    if (!isPattern(risen.length, nights.length)) return absent;
    return holds(
      {
        often: often(risen.length, nights.length, 'nights'),
        count: count(risen.length),
        least: rise(LEAST_RISE),
        usual: rise(median(risen.map((night) => night.rise))),
        leftOut: count(leftOut),
      },
      risen.map(({ date, nadirMinute }) => ({ date, fromMinute: nadirMinute, toMinute: 480 })),
    );
  },
};

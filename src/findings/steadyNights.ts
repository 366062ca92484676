import { isSteady, STEADY_CHANGE, STEADY_RANGE } from '../measures/overnight.ts';
import { nightOf } from './evidence.ts';
import { absent, type Finding, holds, quiet, untold } from './finding.ts';
import { PATTERN_DAYS } from './pattern.ts';
import { often, rise } from './quantities.ts';
import { overnightLike } from './trustExamples.ts';

/** Two nights of three or more were steady from midnight to six. A night may be steady and high; other findings say so. */
export const steadyNights: Finding = {
  id: 'steady-nights',
  source: 'ours (no published threshold found)',
  look({ overnight }) {
    if (!overnight.ok) return quiet(overnight.why);
    const { nights, steady } = overnight.value;
    if (nights.length < PATTERN_DAYS) return untold('too-few-nights');
    if (steady * 3 < nights.length * 2) return absent;
    const calm = nights.filter(isSteady);
    return holds(
      { often: often(steady, nights.length, 'nights'), change: rise(STEADY_CHANGE), range: rise(STEADY_RANGE) },
      calm.map(({ date }) => nightOf(date)),
    );
  },
  examples: [
    ['6 of 9 nights within 30', { overnight: overnightLike([30, -30, 10, 0, 5, 5, 31, 40, 60]) }, 'holds'],
    ['5 of 9 nights', { overnight: overnightLike([30, -30, 10, 0, 5, 31, 31, 40, 60]) }, 'absent'],
    ['6 nights', { overnight: overnightLike([0, 0, 0, 0, 0, 0]) }, 'untold'],
  ],
};

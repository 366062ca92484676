import { isSteady, STEADY_CHANGE, STEADY_RANGE } from '../measures/overnight.ts';
import { PATTERN_DAYS } from './evidence/pattern.ts';
import { nightOf } from './evidence/places.ts';
import { often, rise } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet, untold } from './finding.ts';

/** Two nights of three or more were steady from midnight to six. A night may be steady and high; other findings say so. */
export const steadyNights: Finding<'steady-nights'> = {
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
};

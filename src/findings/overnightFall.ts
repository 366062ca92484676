import { median } from '../stats/quantile.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { isPattern, PATTERN_DAYS } from './evidence/pattern.ts';
import { nightOf } from './evidence/places.ts';
import { clock, often, rise } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet, untold } from './finding.ts';

const LEAST_FALL = 30;

/** Glucose fell by 30 mg/dL or more from midnight to six, on a third of nights or more. */
export const overnightFall: Finding<'overnight-fall'> = {
  id: 'overnight-fall',
  source: 'ours (no published threshold found)',
  look({ overnight }) {
    if (!overnight.ok) return quiet(overnight.why);
    const { nights } = overnight.value;
    if (nights.length < PATTERN_DAYS) return untold('too-few-nights');
    const fallen = nights.filter(({ change }) => change <= -LEAST_FALL);
    if (!isPattern(fallen.length, nights.length)) return absent;
    return holds(
      {
        often: often(fallen.length, nights.length, 'nights'),
        least: rise(LEAST_FALL),
        usual: rise(-median(fallen.map(({ change }) => change))),
        from: clock(0),
        to: clock(NIGHT_END),
      },
      fallen.map(({ date }) => nightOf(date)),
    );
  },
};

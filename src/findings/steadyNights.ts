import { isSteady, STEADY_CHANGE, STEADY_RANGE } from '../measures/overnight.ts';
import type { Night } from '../model/measures.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { PATTERN_DAYS } from './evidence/pattern.ts';
import { nightOf } from './evidence/places.ts';
import { count, limit, often, rise, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet, untold } from './finding.ts';

/** More than half of what was seen of it lay above range. */
const isHigh = ({ share, highMinutes }: Night): boolean => highMinutes > (share * NIGHT_END) / 2;

/**
 * Two nights of three or more were steady from midnight to six.
 * They went well where no more than a third of them were high (ours): a night may be steady and high.
 */
export const steadyNights: Finding<'steady-nights'> = {
  id: 'steady-nights',
  source: 'ours (no published threshold found)',
  look({ overnight, nights: each }) {
    if (!overnight.ok) return quiet(overnight.why);
    const { nights, steady } = overnight.value;
    if (nights.length < PATTERN_DAYS) return untold('too-few-nights');
    if (steady * 3 < nights.length * 2) return absent;
    const calm = nights.filter(isSteady);
    const high = each.ok
      ? each.value.filter((night) => calm.some(({ date }) => date === night.date) && isHigh(night))
      : [];
    return holds(
      {
        often: often(steady, nights.length, 'nights'),
        change: rise(STEADY_CHANGE),
        range: rise(STEADY_RANGE),
        high: count(high.length),
        well: word(each.ok && high.length * 3 <= calm.length ? 'yes' : 'no'),
        limit: limit('high'),
      },
      calm.map(({ date }) => nightOf(date)),
    );
  },
};

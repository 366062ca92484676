import { SEEN_SHARE } from '../targets/consensus.ts';
import { nightOf } from './evidence/places.ts';
import { count, often } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Nights with less than 70 % of their minutes: nothing can be said about lows in them. */
export const nightsWithoutData: Finding<'nights-without-data'> = {
  id: 'nights-without-data',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603 (70 %); by night: ours',
  look({ nights }) {
    if (!nights.ok) return untold(nights.why);
    const thin = nights.value.filter((night) => night.share < SEEN_SHARE);
    if (thin.length === 0) return absent;
    return holds(
      {
        often: often(thin.length, nights.value.length, 'nights'),
        count: count(thin.length),
      },
      thin.map(({ date }) => nightOf(date)),
    );
  },
};

import { SEEN_SHARE } from '../targets/consensus.ts';
import { nightOf } from './evidence.ts';
import { nightsLike } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { count, often } from './quantities.ts';

/** Nights with less than 70 % of their minutes: nothing can be said about lows in them. */
export const nightsWithoutData: Finding = {
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
  examples: [
    ['all nights at 70 %', { nights: nightsLike(14, { share: 0.7 }) }, 'absent'],
    ['one night at 69 %', { nights: nightsLike(14, { share: 1 }, { share: 0.69, state: 'unknown' }) }, 'holds'],
    ['no nights', { nights: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};

import { SEEN_SHARE } from '../targets/consensus.ts';
import { isRepeated } from './evidence/pattern.ts';
import { nightOf } from './evidence/places.ts';
import { count, often, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * Nights of the recording with less than 70 % of their minutes: nothing can be said about lows in them. The night before a
 * first evening is no night of it. Many: 3 or more, and a third or more (ours).
 */
export const nightsWithoutData: Finding<'nights-without-data'> = {
  id: 'nights-without-data',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603 (70 %); by night: ours',
  look({ nights }) {
    if (!nights.ok) return untold(nights.why);
    const recorded = nights.value.filter(({ outside }) => !outside);
    if (recorded.length === 0) return untold('too-few-nights');
    const thin = recorded.filter((night) => night.share < SEEN_SHARE);
    if (thin.length === 0) return absent;
    return holds(
      {
        often: often(thin.length, recorded.length, 'nights'),
        count: count(thin.length),
        all: word(thin.length === recorded.length ? 'yes' : 'no'),
      },
      thin.map(({ date }) => nightOf(date)),
      isRepeated(thin.length, recorded.length) ? 'many' : 'few',
    );
  },
};

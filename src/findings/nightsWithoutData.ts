import type { Night } from '../model/measures.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { isRepeated } from './evidence/pattern.ts';
import { nightOf } from './evidence/places.ts';
import { count, often, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * Nights of the recording with less than 70 % of their minutes: nothing can be said about lows in them. The night before a
 * first evening is no night of it. Many: 3 or more, and a third or more (ours). Once there are such, all nights of the period with
 * too few readings are counted, as the pictures of the nights show each.
 */
export const nightsWithoutData: Finding<'nights-without-data'> = {
  id: 'nights-without-data',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603 (70 %); by night: ours',
  look({ nights }) {
    if (!nights.ok) return untold(nights.why);
    const recorded = nights.value.filter(({ outside }) => !outside);
    if (recorded.length === 0) return untold('too-few-nights');
    const isThin = ({ share }: Night): boolean => share < SEEN_SHARE;
    const within = recorded.filter(isThin).length;
    if (within === 0) return absent;
    const thin = nights.value.filter(isThin);
    return holds(
      {
        often: often(thin.length, nights.value.length, 'nights'),
        count: count(thin.length),
        all: word(within === recorded.length ? 'yes' : 'no'),
      },
      thin.map(({ date }) => nightOf(date)),
      isRepeated(within, recorded.length) ? 'many' : 'few',
    );
  },
};

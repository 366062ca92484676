import { SEEN_SHARE } from '../targets/consensus.ts';
import { count, limit, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * No reading below the low limit in the hours there are, never "no lows": told with the hours, those at night apart. Not where a
 * third of the nights or more is missing: lows at night are the ones that pass unnoticed.
 */
export const noLowsSeen: Finding<'no-lows-seen'> = {
  id: 'no-lows-seen',
  source: 'ours; 70 % Battelino 2019, Diabetes Care 42:1593-1603',
  look({ lows, timeInBands, coverage, nights }) {
    if (!lows.ok) return untold(lows.why);
    if (!timeInBands.ok) return untold(timeInBands.why);
    if (!coverage.ok) return untold(coverage.why);
    const { minutes: spent } = timeInBands.value;
    if (lows.value.list.length > 0 || spent.low > 0 || spent['very-low'] > 0) return absent;
    const { share, hours, night } = coverage.value;
    if (share < SEEN_SHARE) return untold('too-few-readings');
    if (night.share < SEEN_SHARE) return untold('too-few-nights');
    const thin = nights.ok ? nights.value.filter((each) => each.share < 1) : [];
    const gaps = !nights.ok || thin.length > 0 || night.share < 1;
    return holds(
      {
        hours: count(hours),
        nightHours: count(night.hours),
        gaps: word(gaps ? 'yes' : 'no'),
        limit: limit('low'),
      },
      [],
      gaps ? 'night-gaps' : 'whole-nights',
    );
  },
};

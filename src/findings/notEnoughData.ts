import { ENOUGH_DAYS, SEEN_SHARE } from '../targets/consensus.ts';
import { count, minutes, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Fewer than 14 days, or less than 70 % of them with readings: numbers are shown, and told to be unsteady. */
export const notEnoughData: Finding<'not-enough-data'> = {
  id: 'not-enough-data',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603',
  look({ coverage }) {
    if (!coverage.ok) return untold(coverage.why);
    const { byDay, daysWithReadings, hours, ofHours, share: seen, enough } = coverage.value;
    if (enough) return absent;
    const lacking = byDay.length < ENOUGH_DAYS ? (seen < SEEN_SHARE ? 'both' : 'days') : 'share';
    return holds(
      {
        lacking: word(lacking),
        days: count(byDay.length),
        daysWithReadings: count(daysWithReadings),
        neededDays: count(ENOUGH_DAYS),
        hours: minutes(hours * 60),
        ofHours: minutes(ofHours * 60),
        share: share(seen, SEEN_SHARE),
        neededShare: share(SEEN_SHARE),
      },
      byDay.filter((day) => day.share < SEEN_SHARE).map(({ date }) => ({ date })),
      lacking,
    );
  },
};

import { count, dates, share } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Less than a quarter of the day in range, and less than half of what is usual for the person. */
const LEAST = 0.25;

/** Full days almost out of range: an average of a fortnight does not show them. */
export const daysOutOfRange: Finding<'days-out-of-range'> = {
  id: 'days-out-of-range',
  source: 'ours; full day (70 %) Battelino 2019, Diabetes Care 42:1593-1603',
  look({ daily, timeInBands }) {
    if (!daily.ok) return untold(daily.why);
    if (!timeInBands.ok) return untold(timeInBands.why);
    const usual = timeInBands.value.exclusive['in-range'].value;
    const days = daily.value.filter(
      ({ full, inRange }) => full && inRange !== null && inRange < LEAST && inRange < usual / 2,
    );
    if (days.length === 0) return absent;
    const least = days.reduce((a, b) => (b.inRange! < a.inRange! ? b : a));
    return holds(
      {
        count: count(days.length),
        days: count(days.length),
        dates: dates(days.map(({ date }) => date)),
        leastDay: dates([least.date]),
        share: share(least.inRange!),
        usual: share(usual),
      },
      days.map(({ date }) => ({ date })),
    );
  },
};

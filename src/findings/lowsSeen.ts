import { daysOf, evidenceOf, extremes } from './evidence/episodes.ts';
import { felt } from './evidence/felt.ts';
import { count, limit, often } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Every low as an event, very low or not: once is enough. */
export const lowsSeen: Finding<'lows-seen'> = {
  id: 'lows-seen',
  source: 'Danne 2017, Diabetes Care 40:1631-1640 (15 minutes; end rule from memory)',
  look(measures) {
    const { lows, coverage } = measures;
    if (!lows.ok) return untold(lows.why);
    const { list, level2, night } = lows.value;
    if (list.length === 0) return absent;
    const { extreme, longest } = extremes(list);
    const where = list.flatMap((each) => evidenceOf(each));
    const days = daysOf(where);
    return holds(
      {
        count: count(list.length),
        often: often(days.length, coverage.ok ? coverage.value.daysWithReadings : days.length, 'days'),
        veryLow: count(level2),
        night: count(night),
        cut: count(list.filter(({ cut }) => cut.start || cut.end).length),
        longest,
        lowest: extreme,
        limit: limit('low'),
        ...felt(measures),
      },
      where,
    );
  },
};

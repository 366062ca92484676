import type { LocalDate } from '../model/glucose.ts';
import { deepest } from './evidence/deepest.ts';
import { beginningOf, daysOf, evidenceOf, extremes } from './evidence/episodes.ts';
import { felt } from './evidence/felt.ts';
import { count, dates, limit, often, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** As many lows that begin on one day are told by themselves (ours). */
const MANY = 3;

/** Every low as an event, very low or not: once is enough. */
export const lowsSeen: Finding<'lows-seen'> = {
  id: 'lows-seen',
  source: 'Danne 2017, Diabetes Care 40:1631-1640 (15 minutes; end rule from memory)',
  look(measures) {
    const { lows, coverage, daily, pressedLows } = measures;
    if (!lows.ok) return untold(lows.why);
    const { list, level2, night } = lows.value;
    if (list.length === 0) return absent;
    const { extreme, longest } = extremes(list);
    // A low over midnight is one low of the day it began on.
    const where = list.flatMap(beginningOf);
    const days = daysOf(where);
    const touched = daysOf(list.flatMap((each) => evidenceOf(each)));
    const ofDays = coverage.ok ? coverage.value.daysWithReadings : days.length;
    const begun = (day: LocalDate): number => list.filter(({ date }) => date === day).length;
    const crowded = list.map(({ date }) => date).reduce((a, b) => (begun(b) > begun(a) ? b : a));
    const short = daily.ok
      ? daily.value.filter(({ date, minutes }) => minutes.low + minutes['very-low'] > 0 && !touched.includes(date))
          .length
      : 0;
    return holds(
      {
        count: count(list.length),
        often: often(days.length, ofDays, 'days'),
        days: count(days.length),
        ofDays: count(ofDays),
        seen: word(coverage.ok && ofDays < coverage.value.byDay.length ? 'some' : 'all'),
        most: count(begun(crowded) >= MANY ? begun(crowded) : 0),
        mostDate: dates([crowded]),
        shortDays: count(short),
        pressed: count(pressedLows.ok ? pressedLows.value.list.length : 0),
        veryLow: count(level2),
        night: count(night),
        cut: count(list.filter(({ cut }) => cut.start || cut.end).length),
        longest,
        lowest: extreme,
        ...deepest(measures, extreme),
        limit: limit('low'),
        ...felt(measures),
      },
      where,
    );
  },
};

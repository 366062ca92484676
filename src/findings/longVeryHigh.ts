import { daysOf, evidenceOf, extremes } from './evidence/episodes.ts';
import { count, dates, limit, minutes } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LONG = 120;

/** Highs with 2 hours or more above the very high limit. */
export const longVeryHigh: Finding<'long-very-high'> = {
  id: 'long-very-high',
  source: 'ours; the consensus counts 90 minutes inside 2 hours (Battelino 2023, from memory)',
  look({ highs }, targets) {
    if (targets.limits['mg/dL'].veryHigh === null) return untold('not-for-these-targets');
    if (!highs.ok) return untold(highs.why);
    const long = highs.value.list.filter((each) => each.outerMinutes >= LONG);
    if (long.length === 0) return absent;
    const where = long.flatMap((each) => evidenceOf(each, true));
    const days = daysOf(where);
    return holds(
      {
        count: count(long.length),
        days: count(days.length),
        dates: dates(days),
        length: minutes(LONG),
        longest: minutes(Math.max(...long.map((each) => each.outerMinutes))),
        highest: extremes(long).extreme,
        limit: limit('very-high'),
      },
      where,
    );
  },
};

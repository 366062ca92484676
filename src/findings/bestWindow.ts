import { PATTERN_DAYS } from './evidence/pattern.ts';
import { clock, count, often, share } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** The clock window with most days in range and free of lows, when that is two thirds of them or more. */
export const bestWindow: Finding<'best-window'> = {
  id: 'best-window',
  source: 'ours',
  look({ windows }) {
    if (!windows.ok) return untold(windows.why);
    const { fromMinute, toMinute, goodDays, days, inRange } = windows.value.best;
    if (days < PATTERN_DAYS) return untold('too-few-days');
    if (goodDays.length * 3 < days * 2) return absent;
    return holds(
      {
        from: clock(fromMinute),
        to: clock(toMinute),
        often: often(goodDays.length, days, 'days'),
        count: count(goodDays.length),
        share: share(inRange),
      },
      goodDays.map((date) => ({ date, fromMinute, toMinute })),
    );
  },
};

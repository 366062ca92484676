import { windowsLike } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { PATTERN_DAYS } from './pattern.ts';
import { clock, count, often, share } from './quantities.ts';

/** The clock window with most days in range and free of lows, when that is two thirds of them or more. */
export const bestWindow: Finding = {
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
  examples: [
    ['6 of 9 days', { windows: windowsLike(9, 6) }, 'holds'],
    ['5 of 9 days', { windows: windowsLike(9, 5) }, 'absent'],
    ['6 days', { windows: windowsLike(6, 6) }, 'untold'],
    ['too few days to measure', { windows: { ok: false, why: 'too-few-days' } }, 'untold'],
  ],
};

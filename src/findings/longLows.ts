import { evidenceOf, extremes, whenOf } from './evidence/episodes.ts';
import { felt } from './evidence/felt.ts';
import { count, limit, minutes } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LONG = 120;

/** Lows of 2 hours or more. Whether the consensus means 120 minutes or more than 120 is read both ways; ours: from 120. */
export const longLows: Finding<'long-lows'> = {
  id: 'long-lows',
  source: 'extended lows: Battelino 2023, Lancet Diabetes Endocrinol 11:42-57 (minutes from memory)',
  look(measures) {
    const { lows } = measures;
    if (!lows.ok) return untold(lows.why);
    const long = lows.value.list.filter((each) => each.minutes >= LONG);
    if (long.length === 0) return absent;
    const { extreme, longest } = extremes(long);
    const where = long.flatMap((each) => evidenceOf(each));
    return holds(
      {
        count: count(long.length),
        ...whenOf(long),
        night: count(long.filter((each) => each.night).length),
        length: minutes(LONG),
        longest,
        lowest: extreme,
        limit: limit('low'),
        ...felt(measures, (each) => each.minutes >= LONG),
      },
      where,
    );
  },
};

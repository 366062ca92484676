import { daysOf, evidenceOf } from './evidence/episodes.ts';
import { count, dates, limit } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

/** Lows at night that look like somebody lying on the sensor. They stay in every count; both counts are told. */
export const pressedLows: Finding<'pressed-lows'> = {
  id: 'pressed-lows',
  source: 'ours (that pressure gives false lows: from memory)',
  look({ pressedLows }) {
    if (!pressedLows.ok) return quiet(pressedLows.why);
    const { list, lows } = pressedLows.value;
    if (list.length === 0) return absent;
    const where = list.flatMap(({ low }) => evidenceOf(low));
    const days = daysOf(where);
    return holds(
      {
        count: count(list.length),
        lows: count(lows),
        others: count(lows - list.length),
        dates: dates(days),
        days: count(days.length),
        limit: limit('low'),
      },
      where,
    );
  },
};

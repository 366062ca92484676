import { daysOf, evidenceOf } from './episodes.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';
import { count, dates, limit } from './quantities.ts';
import { pressedLike } from './trustExamples.ts';

/** Lows at night that look like somebody lying on the sensor. They stay in every count; both counts are told. */
export const pressedLows: Finding = {
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
  examples: [
    ['one of three', { pressedLows: pressedLike(1, 3) }, 'holds'],
    ['none of three', { pressedLows: pressedLike(0, 3) }, 'absent'],
    ['no readings', { pressedLows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};

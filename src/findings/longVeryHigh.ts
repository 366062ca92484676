import { highsLike } from './episodeExamples.ts';
import { daysOf, evidenceOf, extremes } from './episodes.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { count, dates, limit, minutes } from './quantities.ts';

const LONG = 120;

/** Highs with 2 hours or more above the very high limit. */
export const longVeryHigh: Finding = {
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
  examples: [
    ['120 minutes very high', { highs: highsLike({ level: 2, outerMinutes: 120, minutes: 200 }) }, 'holds'],
    ['119 minutes very high', { highs: highsLike({ level: 2, outerMinutes: 119, minutes: 200 }) }, 'absent'],
    ['a set without a very high limit', { highs: highsLike() }, 'untold', 'pregnancy-type-1'],
    ['no readings', { highs: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};

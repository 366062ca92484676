import { WITHIN } from '../measures/rebounds.ts';
import { median } from '../stats/quantile.ts';
import { evidenceOf } from './evidence/episodes.ts';
import { count, glucose, limit, minutes, often } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LEAST = 2;

/** Highs that began within 2 hours after a low, more than once. An order in time, not a cause. */
export const reboundAfterLows: Finding<'rebound-after-lows'> = {
  id: 'rebound-after-lows',
  source: 'Acciaroli 2022, J Diabetes Sci Technol 16:677-682; twice: ours',
  look({ rebounds }) {
    if (!rebounds.ok) return untold(rebounds.why);
    const { list, ofLows } = rebounds.value;
    if (list.length < LEAST) return absent;
    const peak = list.reduce((a, b) => (b.peak > a.peak || (b.peak === a.peak && b.peakLimit !== 0) ? b : a));
    return holds(
      {
        often: often(list.length, ofLows, 'lows'),
        count: count(list.length),
        within: minutes(WITHIN),
        after: minutes(median(list.map((each) => each.minutesAfter))),
        peak: glucose(peak.peak, peak.peakLimit),
        limit: limit('high'),
      },
      list.flatMap(({ low, highDate }) => [...evidenceOf(low), { date: highDate }]),
    );
  },
};

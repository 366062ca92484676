import { FALSE_HINTS, MATTERS } from '../occasions/comparisons.ts';
import { LEAST_DAYS } from '../occasions/sides.ts';
import type { Measure } from './measure.ts';

/** Occasions of one kind beside those of another, each with a verdict that many comparisons cannot force. */
export const comparisons: Measure<'comparisons'> = {
  id: 'comparisons',
  source:
    '{permutation}: Pitman 1937, J R Stat Soc Suppl 4:119-130; {many-at-once}: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300; Daybands',
  needs: { readings: 1 },
  definition: {
    falseHints: FALSE_HINTS,
    leastDays: LEAST_DAYS,
    leastHighMinutes: MATTERS['high-minutes'],
    leastLowestMgdl: MATTERS.lowest,
    leastFallMgdl: MATTERS.fall,
  },
  compute(shared) {
    const value = shared.occasions().comparisons;
    return { ok: true, value, n: value.filter(({ verdict }) => verdict !== 'too-few').length, of: 'pairs' };
  },
};

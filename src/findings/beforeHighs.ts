import { before } from './evidence/before.ts';
import type { Finding } from './finding.ts';

/**
 * The note that stands out, by the rule of lows, beside highs of 2 hours and more beyond the outer limit, else beside days
 * with more time above range than the middle day.
 */
export const beforeHighs: Finding<'before-highs'> = {
  id: 'before-highs',
  source: 'ours; exact test: Fisher 1934; many at once: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => before(measures, ['very-highs', 'much-high']),
};

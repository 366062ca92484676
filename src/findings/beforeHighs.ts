import { before } from './evidence/before.ts';
import type { Finding } from './finding.ts';

/** What was noted before highs, and days with more time above range than the middle day, and how often the same stands without them. */
export const beforeHighs: Finding<'before-highs'> = {
  id: 'before-highs',
  source: 'ours; exact test: Fisher 1934; many at once: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => before(measures, ['very-highs', 'much-high']),
};

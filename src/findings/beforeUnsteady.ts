import { before } from './evidence/before.ts';
import type { Finding } from './finding.ts';

/** What was noted before days that move more than the middle day, and how often the same stands without them. */
export const beforeUnsteady: Finding<'before-unsteady'> = {
  id: 'before-unsteady',
  source: 'ours; exact test: Fisher 1934; many at once: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => before(measures, ['unsteady']),
};

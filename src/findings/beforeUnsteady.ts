import { before } from './evidence/before.ts';
import type { Finding } from './finding.ts';

/** The note that stands out, by the rule of lows, beside days whose CV lies above that of the middle day. */
export const beforeUnsteady: Finding<'before-unsteady'> = {
  id: 'before-unsteady',
  source: 'ours; exact test: Fisher 1934; many at once: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => before(measures, ['unsteady']),
};

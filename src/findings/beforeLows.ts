import { before } from './evidence/before.ts';
import type { Finding } from './finding.ts';

/** What was noted before lows, and how often the same stands without them. */
export const beforeLows: Finding<'before-lows'> = {
  id: 'before-lows',
  source: 'ours; exact test: Fisher 1934; many at once: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => before(measures, ['lows', 'night-lows', 'very-lows']),
};

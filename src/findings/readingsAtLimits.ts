import { count, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * Readings beyond what the sensor can show. They count in the outer bands; the mean is then a
 * bound on the side on which they lie.
 */
export const readingsAtLimits: Finding<'readings-at-limits'> = {
  id: 'readings-at-limits',
  source: 'common practice, no source',
  look({ mean }) {
    if (!mean.ok) return untold(mean.why);
    const { censored, below, above } = mean.value;
    if (censored === 0) return absent;
    const side = below === 0 ? 'above' : above === 0 ? 'below' : 'both';
    return holds({ count: count(censored), side: word(side), below: count(below), above: count(above) }, [], side);
  },
};

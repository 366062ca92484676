import type { Measures } from '../model/measures.ts';
import { count, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * Readings beyond what the sensor can show. They count in the outer bands; the mean is then a
 * bound on the side on which they lie.
 */
export const readingsAtLimits: Finding<'readings-at-limits'> = {
  id: 'readings-at-limits',
  source: 'common practice, no source',
  look({ mean, oddStretches }) {
    const seen = mean.ok ? mean.value : mean.why === 'bound-unknown' ? withoutMean(oddStretches) : null;
    if (seen === null) return untold(mean.ok ? 'failed' : mean.why);
    const { below, above } = seen;
    if (below + above === 0) return absent;
    const side = below === 0 ? 'above' : above === 0 ? 'below' : 'both';
    const counts = { count: count(below + above), below: count(below), above: count(above) };
    return holds({ ...counts, side: word(side), mean: word(mean.ok ? 'yes' : 'no') }, [], side);
  },
};

/** Where every reading lies beyond an end that no file names there is no mean, and still something to tell. */
const withoutMean = (odd: Measures['oddStretches']): { below: number; above: number } | null =>
  odd.ok ? { below: odd.value.belowLimit, above: odd.value.aboveLimit } : null;

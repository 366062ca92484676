import { count, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Readings beyond what the sensor can show. They count in the outer bands; the mean is then a bound. */
export const readingsAtLimits: Finding<'readings-at-limits'> = {
  id: 'readings-at-limits',
  source: 'common practice, no source',
  look({ mean }) {
    if (!mean.ok) return untold(mean.why);
    const { censored, bounded } = mean.value;
    if (censored === 0) return absent;
    return holds({ count: count(censored), bounded: word(bounded ? 'yes' : 'no') }, []);
  },
};

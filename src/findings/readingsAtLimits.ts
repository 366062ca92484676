import { meanLike } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { count, word } from './quantities.ts';

/** Readings beyond what the sensor can show. They count in the outer bands; the mean is then a bound. */
export const readingsAtLimits: Finding = {
  id: 'readings-at-limits',
  source: 'common practice, no source',
  look({ mean }) {
    if (!mean.ok) return untold(mean.why);
    const { censored, bounded } = mean.value;
    if (censored === 0) return absent;
    return holds({ count: count(censored), bounded: word(bounded ? 'yes' : 'no') }, []);
  },
  examples: [
    ['one reading at the limit', { mean: meanLike(150, 1) }, 'holds'],
    ['none', { mean: meanLike(150) }, 'absent'],
    ['no readings', { mean: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};

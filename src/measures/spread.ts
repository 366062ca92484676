import type { Measured } from '../model/measured.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';

/** SD of all readings of all days (n - 1), in mg/dL. */
export const sd: Measure<'sd'> = {
  id: 'sd',
  source: 'Danne 2017, Diabetes Care 40:1631-1640',
  needs: { readings: 2 },
  definition: {},
  compute: (shared) => spread(shared, (found) => found.sd),
};

/** Coefficient of variation: that SD over the mean of all readings, in percent. */
export const cv: Measure<'cv'> = {
  id: 'cv',
  source: 'Monnier 2017, Diabetes Care 40:832-838; Battelino 2019, Diabetes Care 42:1593-1603',
  needs: { readings: 2 },
  definition: {},
  compute: (shared) => spread(shared, (found) => (100 * found.sd) / found.mean),
};

function spread(shared: Context, of: (found: { mean: number; sd: number }) => number): Measured<number> {
  const found = shared.moments();
  if (found.n === 0) return { ok: false, why: 'bound-unknown' };
  if (found.n < 2) return { ok: false, why: 'too-few-readings' };
  return { ok: true, value: of(found), n: found.n, of: 'readings' };
}

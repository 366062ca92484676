import { INSULIN_WITHIN } from '../occasions/meals.ts';
import type { Measure } from './measure.ts';

/** Mealtime insulin noted without food near it, and the change after 2 and 4 hours. */
export const corrections: Measure<'corrections'> = {
  id: 'corrections',
  source: 'Daybands',
  needs: { readings: 1 },
  definition: { foodWithinMinutes: INSULIN_WITHIN },
  compute(shared) {
    const value = shared.occasions().corrections;
    return { ok: true, value, n: value.filter(({ unusable }) => unusable.length === 0).length, of: 'occasions' };
  },
};

import { NEAR, NIGHT } from '../occasions/remarks.ts';
import type { Measure } from './measure.ts';

/** What was written in a person's own words, whole, with the lows, highs and nights it stands near. */
export const remarks: Measure<'remarks'> = {
  id: 'remarks',
  source: 'Daybands',
  needs: { readings: 1 },
  definition: {
    minutesBefore: NEAR.before,
    minutesAfterLow: NEAR.afterLow,
    minutesAfterHigh: NEAR.afterHigh,
    nightFrom: NIGHT.from,
    nightTo: NIGHT.to,
  },
  compute(shared) {
    const value = shared.occasions().remarks;
    if (value.length === 0) return { ok: false, why: 'none-noted' };
    return { ok: true, value, n: value.length, of: 'notes' };
  },
};

import type { Index } from './indexOf.ts';

/** Areas between the readings and the limits, mg/dL h a day of readings; each reading counts for the time it stands for. */
export interface Areas {
  above: number;
  below: number;
  /** Of the curve itself: 24 times the mean. */
  whole: number;
}

export const areas: Index<Areas> = {
  id: 'areas',
  source: 'Danne 2017, Diabetes Care 40:1631-1640 ({area-under-the-curve})',
  unit: 'mg/dL.h/d',
  definition: {},
  compute({ mgdl, weight, targets }) {
    const { low, high } = targets.limits['mg/dL'];
    let above = 0;
    let below = 0;
    let whole = 0;
    let minutes = 0;
    for (let i = 0; i < mgdl.length; i++) {
      above += Math.max(0, mgdl[i]! - high) * weight[i]!;
      below += Math.max(0, low - mgdl[i]!) * weight[i]!;
      whole += mgdl[i]! * weight[i]!;
      minutes += weight[i]!;
    }
    if (minutes === 0) return { ok: false, why: 'no-readings' };
    const perDay = 24 / minutes;
    const value = { above: above * perDay, below: below * perDay, whole: whole * perDay };
    return { ok: true, value, n: mgdl.length, of: 'readings' };
  },
};

import type { Index } from './indexOf.ts';

/** Share of the time with readings in 70-140 mg/dL (3.9-7.8 mmol/L). Not in pregnancy, whose own range is nearly that. */
export const tightRange: Index<number> = {
  id: 'tightRange',
  source: 'Danne 2017, Diabetes Care 40:1631-1640',
  unit: '1',
  definition: { low: 70, high: 140 },
  compute({ targets, tight, seen, every }) {
    if (seen === 0) return { ok: false, why: 'no-readings' };
    if (targets.limits['mg/dL'].veryHigh === null) return { ok: false, why: 'not-for-these-targets' };
    return { ok: true, value: tight / seen, n: every.mgdl.length, of: 'readings' };
  },
};

import { MGDL_PER_MMOL } from '../units.ts';
import { coverage } from './coverage.ts';
import { mean } from './mean.ts';
import type { Measure } from './measure.ts';

const PERCENT = { at0: 3.31, perMgdl: 0.02392 };
const MMOL_PER_MOL = { at0: 12.71, perMmol: 4.70587 };
const HOURS = 72;

/** GMI from mean sensor glucose in mg/dL. The two equations are not images of each other: each scale has its own. */
export function gmiOf(mgdl: number): { percent: number; mmolPerMol: number } {
  return {
    percent: PERCENT.at0 + PERCENT.perMgdl * mgdl,
    mmolPerMol: MMOL_PER_MOL.at0 + (MMOL_PER_MOL.perMmol * mgdl) / MGDL_PER_MMOL,
  };
}

/** Glucose management indicator; withheld in pregnancy, where its equation was not derived (from memory). */
export const gmi: Measure<'gmi'> = {
  id: 'gmi',
  source: 'Bergenstal 2018, Diabetes Care 41:2275-2280, doi 10.2337/dc18-1581; 72 hours ours',
  needs: { hours: HOURS },
  definition: { ...PERCENT, mmolAt0: MMOL_PER_MOL.at0, perMmol: MMOL_PER_MOL.perMmol, hours: HOURS },
  compute(shared) {
    if (!shared.targets.gmi) return { ok: false, why: 'not-for-these-targets' };
    const average = mean.compute(shared);
    if (!average.ok) return average;
    const seen = coverage.compute(shared);
    if (!seen.ok) return seen;
    if (seen.value.hours < HOURS) return { ok: false, why: 'too-few-readings' };
    return { ok: true, value: gmiOf(average.value.mgdl.value), n: average.n, of: 'readings' };
  },
};

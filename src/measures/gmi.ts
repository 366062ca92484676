import { MGDL_PER_MMOL } from '../units.ts';
import { hoursSeen } from './coverage.ts';
import type { Measure } from './measure.ts';

const PERCENT = { at0: 3.31, perMgdl: 0.02392 };
const MMOL_PER_MOL = { at0: 12.71, perMmol: 4.70587 };
/** Ours: the paper asks for 14 days where there are any, and the report flags fewer. */
export const HOURS = 72;

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
  source: 'Bergenstal 2018, Diabetes Care 41:2275-2280, doi 10.2337/dc18-1581',
  needs: { hours: HOURS },
  definition: { ...PERCENT, mmolAt0: MMOL_PER_MOL.at0, perMmol: MMOL_PER_MOL.perMmol, hours: HOURS },
  compute(shared) {
    if (!shared.targets.gmi) return { ok: false, why: 'not-for-these-targets' };
    if (hoursSeen(shared) < HOURS) return { ok: false, why: 'too-few-readings' };
    const { n, mean } = shared.moments();
    if (n === 0) return { ok: false, why: 'bound-unknown' };
    return { ok: true, value: gmiOf(mean), n, of: 'readings' };
  },
};

import { ln, pow, square } from '../stats/elementary.ts';
import { meanOf } from '../stats/moments.ts';
import type { Index } from './indexOf.ts';
import { fullDayValues } from './trace.ts';

const SOURCE = 'Kovatchev 1998, Diabetes Care 21:1870-1875';

/** Glucose made symmetric: 0 at 112.5 mg/dL, the same size at 70 and 180. Constants from memory; mg/dL, kept to 20-600. */
export function symmetric(mgdl: number): number {
  return 1.509 * (pow(ln(Math.min(600, Math.max(20, mgdl))), 1.084) - 5.381);
}

/** Risk of one value, 0 to 100, whichever side. */
export function risk(mgdl: number): number {
  return 10 * square(symmetric(mgdl));
}

const lowRisk = (mgdl: number) => (symmetric(mgdl) < 0 ? risk(mgdl) : 0);
const highRisk = (mgdl: number) => (symmetric(mgdl) > 0 ? risk(mgdl) : 0);

export interface RiskIndices {
  lbgi: number;
  hbgi: number;
}

export function riskIndices(values: readonly number[]): RiskIndices {
  return { lbgi: meanOf(values.map(lowRisk)), hbgi: meanOf(values.map(highRisk)) };
}

/** Mean over days of the day's largest low and largest high risk. */
export function adrrOf(days: readonly (readonly number[])[]): number {
  return meanOf(days.map((day) => Math.max(...day.map(lowRisk)) + Math.max(...day.map(highRisk))));
}

/** Low and high blood glucose index. Made for fingersticks: from sensor data the low one reads lower (Fabris 2015). */
export const lbgiHbgi: Index<RiskIndices> = {
  id: 'lbgiHbgi',
  source: SOURCE,
  unit: '1',
  definition: { scale: 1.509, power: 1.084, shift: 5.381, from: 20, to: 600 },
  compute({ mgdl }) {
    if (mgdl.length === 0) return { ok: false, why: 'no-readings' };
    return { ok: true, value: riskIndices(Array.from(mgdl)), n: mgdl.length, of: 'readings' };
  },
};

/** Average daily risk range, over full days. Source from memory. */
export const adrr: Index<number> = {
  id: 'adrr',
  source: 'Kovatchev 2006, Diabetes Care 29:2433-2438',
  unit: '1',
  definition: { days: 14 },
  compute(trace) {
    const days = fullDayValues(trace);
    if (trace.mgdl.length === 0) return { ok: false, why: 'no-readings' };
    if (days.length < 14) return { ok: false, why: 'too-few-days' };
    return { ok: true, value: adrrOf(days), n: days.length, of: 'days' };
  },
};

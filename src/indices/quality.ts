import { log10, pow, square } from '../stats/elementary.ts';
import { meanOf, moments } from '../stats/moments.ts';
import { median } from '../stats/quantile.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import type { Index } from './indexOf.ts';

const GRADE_MOST = 50;
const IDEAL = 120;

/** Score of one value in mmol/L; zero near 4.9. The cap at 50 and the cut-offs of the shares are from memory. */
export function gradeScore(mmol: number): number {
  return Math.min(GRADE_MOST, 425 * square(log10(log10(mmol)) + 0.16));
}

export interface Grade {
  mean: number;
  median: number;
  /** Parts of the summed score from below 3.9, from 3.9 to 7.8, and from above 7.8 mmol/L; 0 to 1. */
  hypo: number;
  eu: number;
  hyper: number;
}

export function gradeOf(mmol: readonly number[]): Grade {
  const scores = mmol.map(gradeScore);
  const total = scores.reduce((sum, score) => sum + score, 0);
  const part = (within: (value: number) => boolean) =>
    total === 0 ? 0 : scores.reduce((sum, score, i) => sum + (within(mmol[i]!) ? score : 0), 0) / total;
  return {
    mean: meanOf(scores),
    median: median(scores),
    hypo: part((value) => value < 3.9),
    eu: part((value) => value >= 3.9 && value <= 7.8),
    hyper: part((value) => value > 7.8),
  };
}

/** Mean of |10 log10(x / 120)|^3, mg/dL; with fewer than 25 values plus a twentieth of their range. From memory. */
export function mValueOf(mgdl: readonly number[]): number {
  const mean = meanOf(mgdl.map((value) => pow(Math.abs(10 * log10(value / IDEAL)), 3)));
  return mgdl.length < 25 ? mean + (Math.max(...mgdl) - Math.min(...mgdl)) / 20 : mean;
}

/** 0.001 (mean + SD)^2, mg/dL. */
export function jIndexOf(mean: number, sd: number): number {
  return 0.001 * square(mean + sd);
}

export const grade: Index<Grade> = {
  id: 'grade',
  source: 'Hill 2007, Diabet Med 24:753-758',
  unit: '1',
  definition: { most: GRADE_MOST, low: 3.9, high: 7.8 },
  compute({ mgdl }) {
    if (mgdl.length === 0) return { ok: false, why: 'no-readings' };
    const mmol = Array.from(mgdl, (value) => value / MGDL_PER_MMOL);
    return { ok: true, value: gradeOf(mmol), n: mmol.length, of: 'readings' };
  },
};

export const mValue: Index<number> = {
  id: 'mValue',
  source: 'Schlichtkrull 1965, Acta Med Scand 177:95-102',
  unit: '1',
  definition: { ideal: IDEAL },
  compute({ mgdl }) {
    if (mgdl.length === 0) return { ok: false, why: 'no-readings' };
    return { ok: true, value: mValueOf(Array.from(mgdl)), n: mgdl.length, of: 'readings' };
  },
};

export const jIndex: Index<number> = {
  id: 'jIndex',
  source: 'Wojcicki 1995, Horm Metab Res 27:41-42',
  unit: '1',
  definition: { factor: 0.001 },
  compute({ mgdl, weight }) {
    if (mgdl.length === 0) return { ok: false, why: 'no-readings' };
    const { n, mean, sd } = moments(mgdl, weight);
    if (n < 2) return { ok: false, why: 'too-few-readings' };
    return { ok: true, value: jIndexOf(mean, sd), n, of: 'readings' };
  },
};

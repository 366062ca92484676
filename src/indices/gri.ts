import type { Index } from './indexOf.ts';

export type Zone = 'A' | 'B' | 'C' | 'D' | 'E';

export interface Gri {
  gri: number;
  /** Components: x and y of the published chart. */
  hypo: number;
  hyper: number;
  zone: Zone;
}

const ZONES: readonly [number, Zone][] = [
  [20, 'A'],
  [40, 'B'],
  [60, 'C'],
  [80, 'D'],
];

/** From percentages of time in the exclusive bands. Components and the cap at 100 are from memory. */
export function griOf(veryLow: number, low: number, high: number, veryHigh: number): Gri {
  const hypo = veryLow + 0.8 * low;
  const hyper = veryHigh + 0.5 * high;
  const gri = Math.min(100, 3 * hypo + 1.6 * hyper);
  // The printed borders are whole numbers; weighted sums miss them by a rounding error.
  const zone = ZONES.find(([most]) => gri <= most + 1e-9)?.[1] ?? 'E';
  return { gri, hypo, hyper, zone };
}

/** Glycemia Risk Index. Not for the pregnancy range, nor without enough data. */
export const gri: Index<Gri> = {
  id: 'gri',
  source: 'Klonoff 2023, J Diabetes Sci Technol 17:1226-1242, doi 10.1177/19322968221085273',
  unit: '1',
  definition: { veryLow: 3, low: 2.4, high: 0.8, veryHigh: 1.6, most: 100 },
  compute({ targets, bands, seen, enough, every }) {
    if (seen === 0) return { ok: false, why: 'no-readings' };
    if (targets.limits['mg/dL'].veryHigh === null) return { ok: false, why: 'not-for-these-targets' };
    if (!enough) return { ok: false, why: 'too-few-readings' };
    const percent = (band: number) => (100 * bands[band]!) / seen;
    const value = griOf(percent(0), percent(1), percent(3), percent(4));
    return { ok: true, value, n: every.mgdl.length, of: 'readings' };
  },
};

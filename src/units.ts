import type { GlucoseUnit, MgPerDl } from './model/glucose.ts';

/** mg/dL in one mmol/L: the molar mass of glucose, C6H12O6 = 180.156 g/mol, divided by ten. */
export const MGDL_PER_MMOL = 18.0156;

/** `ReadingColumns.unit` and `Readings.unit` hold the place of the unit in this list. */
export const UNITS: readonly GlucoseUnit[] = ['mg/dL', 'mmol/L'];

/**
 * Limits as the consensus tables print them in both units (Battelino 2019, Diabetes Care 42:1593; ADA Standards of
 * Care tables). A limit is spoken with its published partner, never with a converted number.
 */
const PUBLISHED_PAIRS: readonly (readonly [number, number])[] = [
  [54, 3.0],
  [63, 3.5],
  [69, 3.8],
  [70, 3.9],
  [80, 4.4],
  [90, 5.0],
  [95, 5.3],
  [100, 5.6],
  [110, 6.1],
  [120, 6.7],
  [126, 7.0],
  [130, 7.2],
  [140, 7.8],
  [150, 8.3],
  [180, 10.0],
  [181, 10.1],
  [200, 11.1],
  [250, 13.9],
  [350, 19.4],
];

/** Marks a number as mg/dL. @throws RangeError for NaN and infinities, which are never a glucose. */
export function mgPerDl(value: number): MgPerDl {
  if (!Number.isFinite(value)) throw new RangeError(`not a glucose: ${value}`);
  return value as MgPerDl;
}

/** A native value in mg/dL, unrounded. Never classify the result: bands are decided in the native unit. */
export function toMgPerDl(native: number, unit: GlucoseUnit): MgPerDl {
  return mgPerDl(unit === 'mmol/L' ? native * MGDL_PER_MMOL : native);
}

/** mg/dL in the unit asked for, unrounded. */
export function fromMgPerDl(value: MgPerDl, unit: GlucoseUnit): number {
  return unit === 'mmol/L' ? value / MGDL_PER_MMOL : value;
}

/** The printed partner of a limit in the other unit; undefined when no source prints the pair. */
export function publishedPartner(limit: number, unit: GlucoseUnit): number | undefined {
  const [own, other] = unit === 'mg/dL' ? [0, 1] : [1, 0];
  return PUBLISHED_PAIRS.find((pair) => pair[own] === limit)?.[other];
}

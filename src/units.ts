import type { GlucoseUnit, MgPerDl } from './model/glucose.ts';

/** mg/dL in one mmol/L: the molar mass of glucose, C6H12O6 = 180.156 g/mol, divided by ten. */
export const MGDL_PER_MMOL = 18.0156;

/** `ReadingColumns.unit` and `Readings.unit` hold the place of the unit in this list. */
export const UNITS: readonly GlucoseUnit[] = ['mg/dL', 'mmol/L'];

/** Marks a number as mg/dL. @throws RangeError for NaN and infinities, which are never a glucose. */
export function mgPerDl(value: number): MgPerDl {
  if (!Number.isFinite(value)) throw new RangeError(`not a glucose: ${value}`);
  return value as MgPerDl;
}

/** A native value in mg/dL, unrounded. Never classify the result: bands are decided in the native unit. */
export function toMgPerDl(native: number, unit: GlucoseUnit): MgPerDl {
  return mgPerDl(unit === 'mmol/L' ? native * MGDL_PER_MMOL : native);
}

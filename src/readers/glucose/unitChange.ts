import type { GlucoseUnit } from '../../model/glucose.ts';
import { unitSteps } from '../evidence/levels.ts';
import { CELL, type GlucoseCells, unitCode } from './glucoseCell.ts';
import { bothUnits, MMOL_TOP } from './unit.ts';

/** The question that a change of unit within a file asks. */
export const BY_SIZE = { of: 'layout', field: 'units', answer: JSON.stringify({ units: 'by-size' }) } as const;

/** The row at which the numbers without a unit of their own go over from one unit to the other. */
export function cutAt({ state, unit, value }: GlucoseCells): number | undefined {
  let [small, large] = [false, false];
  for (let k = 0; k < value.length && !(small && large); k++) {
    if (state[k] !== CELL.number || unit[k] !== 2) continue;
    if (value[k]! <= MMOL_TOP) small = true;
    else large = true;
  }
  // Numbers of one size change nowhere.
  if (!small || !large) return undefined;
  return unitSteps(value.map((number, k) => (state[k] === CELL.number && unit[k] === 2 ? number : Number.NaN)))[0];
}

/** The numbers on both sides of a change, as the question shows them. */
export function changeAt({ value, state }: GlucoseCells, cut: number, lineOf: (k: number) => number) {
  let before = cut - 1;
  while (before > 0 && state[before] !== CELL.number) before--;
  return {
    actual: bothUnits(value[cut]!, lineOf(cut)),
    expected: { is: 'at-line', text: String(value[before]), line: lineOf(before) },
    question: BY_SIZE,
  } as const;
}

/** Rows without a unit of their own in the one that their size shows: nothing in mmol/L lies above 33.3. */
export function fillBySize(cells: GlucoseCells): GlucoseUnit {
  for (let k = 0; k < cells.unit.length; k++)
    if (cells.unit[k] === 2) cells.unit[k] = unitCode(cells.value[k]! <= MMOL_TOP ? 'mmol/L' : 'mg/dL');
  return 'mg/dL';
}

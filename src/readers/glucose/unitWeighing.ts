import type { GlucoseUnit } from '../../model/glucose.ts';
import type { Choice } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import type { Hints } from '../hints.ts';
import { CELL, type GlucoseCells } from './glucoseCell.ts';
import { bothUnits, MMOL_TOP, PLAUSIBLE } from './unit.ts';
import { BY_SIZE } from './unitChange.ts';

/** The largest number taken for a glucose value at all while weighing the unit. */
const TOP = 1000;

/** No unit anywhere: the numbers propose one where only one is possible, and refuse the rest (ours). */
export function weighUnit(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  hinted: Hints['unit'],
  book: IssueBook,
  choices: Choice[],
): GlucoseUnit | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  let lowAt = 0;
  let highAt = 0;
  let decimals = 0;
  let fractions = 0;
  let n = 0;
  for (let k = 0; k < cells.state.length; k++) {
    const value = cells.value[k]!;
    if (cells.state[k] !== CELL.number || value > TOP) continue;
    n++;
    if (value < low) {
      low = value;
      lowAt = k;
    }
    if (value > high) {
      high = value;
      highAt = k;
    }
    if (cells.mark[k] !== 0) decimals++;
    if (!Number.isInteger(value)) fractions++;
  }
  if (n === 0) {
    // Only words such as LOW, or nothing: no number depends on the unit.
    choices.push({ id: 'unit', value: 'mg/dL', by: 'default', evidence: { is: 'no-number' } });
    return 'mg/dL';
  }
  const seen = { count: n, low, high };
  if (high <= MMOL_TOP && decimals > 0) {
    choices.push({ id: 'unit', value: 'mmol/L', by: 'file', evidence: { is: 'values-with-decimals', ...seen } });
    return 'mmol/L';
  }
  // A program may write whole numbers as 140.0; what is no whole number is mg/dL where no number could be mmol/L.
  if ((fractions === 0 && high > 40 && low > 0) || (low > MMOL_TOP && high > PLAUSIBLE['mmol/L'].high)) {
    choices.push({
      id: 'unit',
      value: 'mg/dL',
      by: 'file',
      evidence: { is: fractions === 0 ? 'values-whole' : 'values-with-decimals', ...seen },
    });
    return 'mg/dL';
  }
  if (low > MMOL_TOP) {
    choices.push({ id: 'unit', value: 'mg/dL', by: 'file', evidence: { is: 'values-above', ...seen } });
    return 'mg/dL';
  }
  const cut = cleanCut(cells);
  if (cut > 0) {
    const last = before(cells, cut);
    book.add('unit-changes', 'refusal', lineOf(cut), {
      actual: bothUnits(cells.value[cut]!, lineOf(cut)),
      expected: { is: 'values-before', ...seen, value: cells.value[last]!, line: lineOf(last) },
      question: BY_SIZE,
    });
    return undefined;
  }
  if (hinted && low >= PLAUSIBLE[hinted.unit].low && high <= PLAUSIBLE[hinted.unit].high) {
    choices.push({ id: 'unit', value: hinted.unit, by: 'file', evidence: { is: 'named', name: hinted.evidence } });
    return hinted.unit;
  }
  const at = low < 20 && high > MMOL_TOP ? lowAt : highAt;
  book.add('unit-unclear', 'refusal', lineOf(at), {
    actual: { is: 'values-seen', ...seen },
    expected: bothUnits(cells.value[at]!, lineOf(at)),
    question: { of: 'unit', answer: 'mg/dL' },
  });
  return undefined;
}

/** The row of the last number above a row. */
function before(cells: GlucoseCells, cut: number): number {
  let k = cut - 1;
  while (k > 0 && (cells.state[k] !== CELL.number || cells.value[k]! > TOP)) k--;
  return k;
}

/** The row where values of one size end and values of the other begin, when there is exactly one; else 0. */
function cleanCut(cells: GlucoseCells): number {
  let cut = 0;
  let last = -1;
  for (let k = 0; k < cells.state.length; k++) {
    const value = cells.value[k]!;
    if (cells.state[k] !== CELL.number || value > TOP) continue;
    const side = value <= MMOL_TOP ? 1 : 0;
    if (last !== -1 && side !== last) {
      if (cut > 0) return 0;
      cut = k;
    }
    last = side;
  }
  return cut;
}

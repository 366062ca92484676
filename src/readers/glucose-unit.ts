import type { GlucoseUnit } from '../model/glucose.ts';
import type { Choice } from '../model/input.ts';
import type { IssueBook } from './book.ts';
import { CELL, type GlucoseCells, unitCode } from './glucose.ts';
import { glucoseUnit, MMOL_TOP, PLAUSIBLE } from './unit.ts';

/** The largest number taken for a glucose value at all while weighing the unit. */
const TOP = 1000;
/** Fewer odd values than this are told one by one. */
const FEW = 4;

/**
 * Settles the unit of a glucose column: the user's word, then what the rows and the header say, then what the numbers
 * allow. Rows keep a unit of their own. Undefined after a refusal, which shows both readings.
 */
export function settleUnit(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  wanted: GlucoseUnit | undefined,
  book: IssueBook,
  choices: Choice[],
): GlucoseUnit | undefined {
  const fromHeader = cells.column.unit ? glucoseUnit(cells.column.unit) : undefined;
  const own = ownUnits(cells);
  if (wanted) {
    const code = unitCode(wanted);
    const other = fromHeader && fromHeader !== wanted ? fromHeader : own.kinds.find((kind) => kind !== code);
    if (other !== undefined) {
      book.add('unit-contradicts-file', 'warning', 0, {
        actual: typeof other === 'string' ? other : other === 0 ? 'mg/dL' : 'mmol/L',
        expected: wanted,
      });
    }
    cells.unit.fill(code);
    choices.push({ id: 'unit', value: wanted, by: 'user' });
    // The user's word stands, and is said to look wrong.
    const seen = looksLikeOther(cells, wanted);
    if (seen) book.add('unit-contradicts-values', 'warning', lineOf(0), { actual: seen, expected: wanted });
    return wanted;
  }
  if (fromHeader) {
    const seen = looksLikeOther(cells, fromHeader);
    if (seen) {
      const option = `--unit ${fromHeader === 'mg/dL' ? 'mmol/L' : 'mg/dL'}`;
      book.add('unit-contradicts-values', 'refusal', lineOf(0), { actual: seen, expected: fromHeader, option });
      return undefined;
    }
    choices.push({
      id: 'unit',
      value: fromHeader,
      by: cells.column.given ? 'user' : 'file',
      evidence: cells.column.name,
    });
    return fill(cells, fromHeader);
  }
  if (own.with > 0 && own.without === 0) {
    const value = own.kinds.map((kind) => (kind === 0 ? 'mg/dL' : 'mmol/L'));
    choices.push({ id: 'unit', value: value.join(', '), by: 'file', evidence: 'unit written in each row' });
    return value[0] as GlucoseUnit;
  }
  return weigh(cells, lineOf, book, choices);
}

function fill(cells: GlucoseCells, unit: GlucoseUnit): GlucoseUnit {
  const code = unitCode(unit);
  for (let k = 0; k < cells.unit.length; k++) if (cells.unit[k] === 2) cells.unit[k] = code;
  return unit;
}

/** More than half of the numbers cannot be in this unit and can be in the other: their range; else ''. */
function looksLikeOther(cells: GlucoseCells, unit: GlucoseUnit): string {
  const here = PLAUSIBLE[unit];
  const there = PLAUSIBLE[unit === 'mg/dL' ? 'mmol/L' : 'mg/dL'];
  let n = 0;
  let other = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (let k = 0; k < cells.state.length; k++) {
    if (cells.state[k] !== CELL.number || (cells.unit[k] !== 2 && cells.unit[k] !== unitCode(unit))) continue;
    const value = cells.value[k]!;
    n++;
    const fits = value >= here.low && value <= here.high;
    if (fits || value < there.low || value > there.high) continue;
    other++;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return other >= FEW && other * 2 > n ? `${other} values from ${low} to ${high}` : '';
}

function ownUnits(cells: GlucoseCells): { with: number; without: number; kinds: number[] } {
  let withUnit = 0;
  let without = 0;
  const seen = [false, false];
  for (let k = 0; k < cells.unit.length; k++) {
    const state = cells.state[k]!;
    if (state !== CELL.number && (state !== CELL.limit || Number.isNaN(cells.value[k]))) continue;
    const unit = cells.unit[k]!;
    if (unit === 2) without++;
    else {
      withUnit++;
      seen[unit] = true;
    }
  }
  return { with: withUnit, without, kinds: [0, 1].filter((kind) => seen[kind]) };
}

/** No unit anywhere: the numbers propose one where only one is possible, and refuse the rest (ours). */
function weigh(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  book: IssueBook,
  choices: Choice[],
): GlucoseUnit | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  let lowAt = 0;
  let highAt = 0;
  let decimals = 0;
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
  }
  if (n === 0) {
    // Only words such as LOW, or nothing: no number depends on the unit.
    choices.push({ id: 'unit', value: 'mg/dL', by: 'default', evidence: 'no number to weigh' });
    return fill(cells, 'mg/dL');
  }
  const evidence = `${n} values from ${low} to ${high}`;
  if (high <= MMOL_TOP && decimals > 0) {
    choices.push({ id: 'unit', value: 'mmol/L', by: 'file', evidence: `${evidence}, with decimals` });
    return fill(cells, 'mmol/L');
  }
  if (decimals === 0 && high > 40) {
    choices.push({ id: 'unit', value: 'mg/dL', by: 'file', evidence: `${evidence}, whole numbers` });
    return fill(cells, 'mg/dL');
  }
  const cut = cleanCut(cells);
  if (cut > 0) {
    book.add('unit-changes', 'refusal', lineOf(cut), {
      actual: `${cells.value[cut]} (line ${lineOf(cut)})`,
      expected: evidence,
      option: '--layout',
    });
    return undefined;
  }
  book.add('unit-unclear', 'refusal', lineOf(low < 20 && high > MMOL_TOP ? lowAt : highAt), {
    actual: evidence,
    expected: `mg/dL: ${low}-${high}, mmol/L: ${low}-${high}`,
    option: '--unit mg/dL',
  });
  return undefined;
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

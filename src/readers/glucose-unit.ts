import type { GlucoseUnit } from '../model/glucose.ts';
import type { Choice } from '../model/input.ts';
import type { IssueBook } from './book.ts';
import { CELL, type GlucoseCells, unitCode, unitOf } from './glucose.ts';
import type { Hints } from './hints.ts';
import { bothUnits, glucoseUnit, MMOL_TOP, PLAUSIBLE } from './unit.ts';

/** The largest number taken for a glucose value at all while weighing the unit. */
const TOP = 1000;
/** Fewer odd values than this are told one by one. */
const FEW = 4;

/** What the user said of the unit: `laid` in a layout of this very file, `asked` of files that name no unit. */
export interface UnitWords {
  laid?: GlucoseUnit | undefined;
  asked?: GlucoseUnit | undefined;
  /** What the person's other files say; only where this one is open. */
  hinted?: Hints['unit'] | undefined;
  /** Line of the column names, 0 when there are none. */
  headerLine: number;
}

/**
 * Settles the unit of a glucose column: a layout's word, then what the rows and the header say, then the user's word for
 * files that say nothing, then what the numbers allow. Rows keep a unit of their own. Undefined after a refusal, which
 * shows both readings.
 */
export function settleUnit(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  words: UnitWords,
  book: IssueBook,
  choices: Choice[],
): GlucoseUnit | undefined {
  const { laid, asked } = words;
  const fromHeader = cells.column.unit ? glucoseUnit(cells.column.unit) : undefined;
  const own = ownUnits(cells);
  const other = contradiction(cells, lineOf, words, fromHeader);
  if (other && !laid) {
    book.add('unit-contradicts-file', 'refusal', other.line, {
      actual: other.unit,
      expected: asked!,
      option: '--layout',
    });
    return undefined;
  }
  if (laid) {
    if (other) book.add('unit-contradicts-layout', 'warning', other.line, { actual: other.unit, expected: laid });
    return byUser(cells, laid, lineOf, book, choices);
  }
  if (fromHeader) {
    const seen = looksLikeOther(cells, fromHeader);
    if (seen) {
      const more = { actual: seen, expected: fromHeader, option: '--layout' };
      book.add('unit-contradicts-values', 'refusal', lineOf(0), more);
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
  if (asked) return byUser(cells, asked, lineOf, book, choices);
  return weigh(cells, lineOf, words.hinted, book, choices);
}

/** Where the file says another unit than the user: in the names of the columns, or in the first row that does. */
function contradiction(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  { laid, asked, headerLine }: UnitWords,
  fromHeader: GlucoseUnit | undefined,
): { unit: GlucoseUnit; line: number } | undefined {
  const wanted = laid ?? asked;
  if (!wanted) return undefined;
  if (fromHeader && fromHeader !== wanted) return { unit: fromHeader, line: headerLine };
  const code = unitCode(wanted);
  for (let k = 0; k < cells.unit.length; k++) {
    if (cells.unit[k] === 2 || cells.unit[k] === code) continue;
    const state = cells.state[k]!;
    if (state === CELL.number || (state === CELL.limit && !Number.isNaN(cells.value[k])))
      return { unit: unitOf(cells.unit[k]!), line: lineOf(k) };
  }
  return undefined;
}

/** The user's word stands, and is said to look wrong where it does. */
function byUser(
  cells: GlucoseCells,
  unit: GlucoseUnit,
  lineOf: (k: number) => number,
  book: IssueBook,
  choices: Choice[],
): GlucoseUnit {
  cells.unit.fill(unitCode(unit));
  choices.push({ id: 'unit', value: unit, by: 'user' });
  const seen = looksLikeOther(cells, unit);
  if (seen) book.add('unit-contradicts-user', 'warning', lineOf(0), { actual: seen, expected: unit });
  return unit;
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
  hinted: Hints['unit'],
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
      actual: bothUnits(cells.value[cut]!, lineOf(cut)),
      expected: `${evidence}, before it ${cells.value[before(cells, cut)]} (line ${lineOf(before(cells, cut))})`,
      option: '--layout',
    });
    return undefined;
  }
  if (hinted && low >= PLAUSIBLE[hinted.unit].low && high <= PLAUSIBLE[hinted.unit].high) {
    choices.push({ id: 'unit', value: hinted.unit, by: 'file', evidence: hinted.evidence });
    return fill(cells, hinted.unit);
  }
  const at = low < 20 && high > MMOL_TOP ? lowAt : highAt;
  book.add('unit-unclear', 'refusal', lineOf(at), {
    actual: evidence,
    expected: bothUnits(cells.value[at]!, lineOf(at)),
    option: '--unit mg/dL',
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

import type { Detail } from '../../model/detail.ts';
import type { GlucoseUnit } from '../../model/glucose.ts';
import type { Choice } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import type { Hints } from '../hints.ts';
import { CELL, type GlucoseCells, unitCode, unitOf } from './glucoseCell.ts';
import { glucoseUnit, PLAUSIBLE } from './unit.ts';
import { changeAt, cutAt, fillBySize } from './unitChange.ts';
import { weighUnit } from './unitWeighing.ts';

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
  /** A layout says that each part is in the unit that its size shows. */
  bySize: boolean;
  /** Other values of the same column change their unit half way. */
  turned?: boolean;
  /** Units that lines above the table name. */
  above: { unit: GlucoseUnit; line: number }[];
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
  const named = cells.column.unit ? glucoseUnit(cells.column.unit) : undefined;
  if (cells.column.foreign && !laid) {
    book.add('unit-foreign', 'refusal', words.headerLine, { actual: cells.column.unit!, expected: 'mg/dL, mmol/L' });
    return undefined;
  }
  const cut = cutAt(cells);
  if ((cut !== undefined || words.turned) && words.bySize) {
    choices.push({ id: 'unit', value: 'both', by: 'user' });
    return fillBySize(cells);
  }
  if (cut !== undefined) {
    book.add('unit-changes', 'refusal', lineOf(cut), changeAt(cells, cut, lineOf));
    return undefined;
  }
  // Two units named above the table name none.
  const line = words.above.length === 1 ? words.above[0] : undefined;
  if (line && named && line.unit !== named && !laid) {
    book.add('unit-line-contradicts', 'refusal', words.headerLine, {
      actual: { is: 'at-line', text: line.unit, line: line.line },
      expected: named,
      question: layoutUnit(line.unit),
    });
    return undefined;
  }
  const fromHeader = named ?? line?.unit;
  const other = contradiction(cells, lineOf, words, fromHeader, named ? undefined : line?.line);
  if (other && !laid) {
    book.add('unit-contradicts-file', 'refusal', other.line, {
      actual: other.unit,
      expected: asked!,
      question: layoutUnit(asked!),
    });
    return undefined;
  }
  if (laid) {
    if (other) book.add('unit-contradicts-layout', 'warning', other.line, { actual: other.unit, expected: laid });
    return byUser(cells, laid, lineOf, book, choices);
  }
  if (fromHeader) {
    if (isRefuted(cells, fromHeader, lineOf, book)) return undefined;
    choices.push({
      id: 'unit',
      value: fromHeader,
      by: cells.column.given && named ? 'user' : 'file',
      evidence: named ? { is: 'named', name: cells.column.name } : { is: 'line', line: line!.line },
    });
    return fill(cells, fromHeader);
  }
  const own = withFewBare(cells, ownUnits(cells));
  if (own.with > 0 && own.without === 0) {
    const [unit, other] = own.kinds.map(unitOf);
    if (own.kinds.some((code) => isRefuted(cells, unitOf(code), lineOf, book))) return undefined;
    const value = other === undefined ? unit! : 'both';
    choices.push({ id: 'unit', value, by: 'file', evidence: { is: 'unit-in-rows' } });
    return unit;
  }
  if (asked) return byUser(cells, asked, lineOf, book, choices);
  const weighed = weighUnit(cells, lineOf, words.hinted, book, choices);
  return weighed && fill(cells, weighed);
}

const layoutUnit = (unit: GlucoseUnit) => ({ of: 'layout', field: 'unit', answer: JSON.stringify({ unit }) }) as const;

/** Where the file says another unit than the user: in the names of the columns, or in the first row that does. */
function contradiction(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  { laid, asked, headerLine }: UnitWords,
  fromHeader: GlucoseUnit | undefined,
  lineAbove: number | undefined,
): { unit: GlucoseUnit; line: number } | undefined {
  const wanted = laid ?? asked;
  if (!wanted) return undefined;
  if (fromHeader && fromHeader !== wanted) return { unit: fromHeader, line: lineAbove ?? headerLine };
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

/** Whether the numbers speak against a unit that the file names, in names, above or in its rows; the book says so. */
function isRefuted(cells: GlucoseCells, unit: GlucoseUnit, lineOf: (k: number) => number, book: IssueBook): boolean {
  const seen = looksLikeOther(cells, unit);
  if (!seen) return false;
  book.add('unit-contradicts-values', 'refusal', lineOf(0), {
    actual: seen,
    expected: unit,
    question: layoutUnit(unit === 'mg/dL' ? 'mmol/L' : 'mg/dL'),
  });
  return true;
}

/** More than half of the numbers cannot be in this unit and can be in the other: their range. */
function looksLikeOther(cells: GlucoseCells, unit: GlucoseUnit): Extract<Detail, { is: 'values-seen' }> | undefined {
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
  return other >= FEW && other * 2 > n ? { is: 'values-seen', count: other, low, high } : undefined;
}

/** So small a share of cells without a unit, among cells with one, stops no file (ours). */
const FEW_BARE = 0.02;

/** Few numbers that name no unit beside many that name one: in the same where they cannot be in the other, else told one by one. */
function withFewBare(cells: GlucoseCells, own: ReturnType<typeof ownUnits>): ReturnType<typeof ownUnits> {
  if (own.without === 0 || own.without > own.with * FEW_BARE) return own;
  const [code, other] = own.kinds;
  const range = PLAUSIBLE[unitOf(code === 0 ? 1 : 0)];
  for (let k = 0; k < cells.unit.length; k++) {
    if ((cells.state[k] !== CELL.number && cells.state[k] !== CELL.limit) || cells.unit[k] !== 2) continue;
    const both = cells.value[k]! >= range.low && cells.value[k]! <= range.high;
    if (other !== undefined || both) cells.state[k] = CELL.unit;
    else cells.unit[k] = code!;
  }
  return { ...own, without: 0 };
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

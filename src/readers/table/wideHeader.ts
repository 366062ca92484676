import { glucoseUnit } from '../glucose/unit.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import { fitDelimiters } from './delimiter.ts';
import { cellText, fieldCount, locate, type Records, scanRecords } from './records.ts';
import { isBlankRecord } from './rowFit.ts';
import { conceptsOf, tokens } from './vocabulary.ts';

/** Clock times a header must name before a table counts as one row a day, and days before it counts as one column a day. */
const FEWEST = 4;
const FEWEST_DAYS = 2;
/** The minutes of a day, and the days of ten years: more columns than that are none of hours or days. */
const MOST_HOURS = 1440;
const MOST_DAYS = 3660;
export interface Header {
  records: Records;
  /** The record of it, and its columns that are clock times, or days. */
  at: number;
  across: number[];
  days: boolean;
  /** Further rows below that name hours or days anew, each with those of its columns. */
  below: Map<number, number[]>;
  /** Something names it as glucose. */
  named: boolean;
  /** As words above or in it name it; empty: nowhere. */
  unit: string;
}

/** The header of such a table; undefined when it is none. */
export function findHeader(bytes: Uint8Array): Header | undefined {
  const fit = fitDelimiters(bytes).fits[0];
  if (!fit) return undefined;
  const records = scanRecords(bytes, fit.delimiter);
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const shapeAt = (row: number, column: number): number =>
    locate(records, row, column, span) ? readStamp(records.bytes, span.from, span.to, stamp) : -1;
  const across = (at: number): { clocks: number[]; days: number[] } => {
    const clocks: number[] = [];
    const days: number[] = [];
    for (let c = 1; c < fieldCount(records, at); c++) {
      const shape = shapeAt(at, c);
      if (shape === SHAPE.clock) clocks.push(c);
      else if (shape === SHAPE.day) days.push(c);
    }
    return { clocks, days };
  };
  const isNamed = (at: number): boolean => {
    const first = shapeAt(at, 0);
    return first !== SHAPE.clock && first !== SHAPE.stamp && first !== SHAPE.day;
  };
  const below = (from: number, of: 'clocks' | 'days'): Map<number, number[]> => {
    const found = new Map<number, number[]>();
    for (let at = from + 1; at < records.count; at++) {
      if (!isNamed(at)) continue;
      const columns = across(at)[of];
      if (columns.length > 0 && (of === 'days' || areHours(columns.map((c) => cellText(records, at, c)))))
        found.set(at, columns);
    }
    return found;
  };
  /** Whether most of the next rows say in their first cell what they are of. */
  const rowsNamed = (at: number): boolean => {
    const next = [1, 2, 3, 4]
      .map((more) => at + more)
      .filter((row) => row < records.count && !isBlankRecord(records, row));
    return next.filter((row) => locate(records, row, 0, span)).length * 2 > next.length;
  };
  let words = '';
  for (let at = 0; at < Math.min(records.count, 50); at++) {
    const fields = fieldCount(records, at);
    const { clocks, days } = across(at);
    for (let c = 0; c < Math.min(fields, 20); c++)
      if (!clocks.includes(c) && !days.includes(c)) words += ` ${cellText(records, at, c)}`;
    const named = conceptsOf(tokens(words)).has('glucose') || unitIn(words) !== '';
    if (!isNamed(at)) continue;
    // A cell besides the days may hold a sum, but no other value.
    if (
      days.length >= FEWEST_DAYS &&
      days.length <= MOST_DAYS &&
      days.length >= fields - 2 &&
      at + 1 < records.count &&
      shapeAt(at + 1, 0) === SHAPE.clock
    )
      return { records, at, across: days, below: below(at, 'days'), days: true, named, unit: unitIn(words) };
    // Numbers with a point look like clocks too: a header's hours follow each other, above rows that name their day.
    const hours = clocks.map((c) => cellText(records, at, c));
    if (clocks.length < FEWEST || clocks.length > MOST_HOURS || !areHours(hours) || !rowsNamed(at)) continue;
    // Nothing says it is glucose: a table of steps or of meals looks just the same.
    if (!named) return undefined;
    return { records, at, across: clocks, below: below(at, 'clocks'), days: false, named, unit: unitIn(words) };
  }
  return undefined;
}

/** Hours of one form that follow each other, at most once past midnight: means with two decimals, in a row of their own, do not. */
function areHours(cells: readonly string[]): boolean {
  const withSign = cells.filter((cell) => /[:h]/i.test(cell)).length;
  if (withSign > 0) return withSign === cells.length;
  const back = cells.filter(
    (cell, i) => i > 0 && Number(cell.replace(/\D/, '.')) <= Number(cells[i - 1]!.replace(/\D/, '.')),
  );
  return cells.length >= FEWEST && back.length < 2;
}

function unitIn(words: string): string {
  const found = /(mg\s?\/\s?dl|mmol\s?\/\s?l)/i.exec(words);
  return found ? (glucoseUnit(found[1]!) ?? '') : '';
}

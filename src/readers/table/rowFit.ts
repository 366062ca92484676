import type { IssueBook } from '../book.ts';
import { cellText, fieldCount, locate, type Records, recordText } from './records.ts';
import type { Table } from './tables.ts';

export type Misfit = 'row-too-long' | 'row-too-short' | 'quote-unclosed';

/**
 * Why a row's shape rules it out: longer than its header with something in the extra cells, a cell short with something under the
 * `unnamed` column (shortRows.ts), or a quote left open.
 */
export function rowFit(records: Records, row: number, width: number, unnamed?: number): Misfit | undefined {
  const fields = records.first[row + 1]! - records.first[row]!;
  if (unnamed !== undefined && fields === width - 1 && locate(records, row, unnamed, { from: 0, to: 0 }))
    return 'row-too-short';
  if (fields > width) {
    const span = { from: 0, to: 0 };
    for (let c = width; c < fields; c++) if (locate(records, row, c, span)) return 'row-too-long';
  }
  return records.unclosed.size > 0 && records.unclosed.has(row) ? 'quote-unclosed' : undefined;
}

/**
 * `12:00,5,6` beside `12:00,6`: a decimal comma inside a file parted by commas. Told once for the table, with one row
 * of each kind; a 5 with a spare 6 is never taken for a reading.
 */
export function delimiterInNumbers(records: Records, table: Table, book: IssueBook): boolean {
  const width = table.columns.length;
  const value = table.columns.find((column) => ['sensor', 'glucose', 'fingerstick', 'value'].includes(column.role));
  if (records.delimiter !== 0x2c || !value) return false;
  let long = 0;
  let longRow = -1;
  let shortRow = -1;
  let rows = 0;
  for (let r = table.from; r < table.to; r++) {
    const fields = fieldCount(records, r);
    if (fields < 2) continue;
    rows++;
    if (fields !== width + 1) {
      if (shortRow < 0) shortRow = r;
      continue;
    }
    if (
      /^\d{1,2}$/.test(cellText(records, r, value.index)) &&
      /^\d{1,2}$/.test(cellText(records, r, value.index + 1))
    ) {
      long++;
      if (longRow < 0) longRow = r;
    }
  }
  if (long < 2 || long < rows * 0.05) return false;
  book.add('decimal-mark-is-delimiter', 'refusal', records.line[longRow]!, {
    actual: recordText(records, longRow),
    expected: shortRow < 0 ? table.columns.map((column) => column.name).join(',') : recordText(records, shortRow),
    count: long,
  });
  return true;
}

/** A line with nothing on it. */
export function isBlankRecord(records: Records, row: number): boolean {
  return (
    records.first[row + 1]! - records.first[row]! === 1 && records.ends[records.first[row]!] === records.start[row]
  );
}

import { utf8 } from '../../bytes/text.ts';
import { DELIMITERS, fieldsIn, LONGEST, otherFields, rowsPutIn } from './evenRows.ts';
import { type Records, scanRecords } from './records.ts';
import { isBlankRecord } from './rowFit.ts';
import { columnsNamed, mayBeHeader, type Table } from './tables.ts';

/** Rows behind a header of which one must be a row of it: a line of units, and blank ones (ours). */
const SOON = 4;

/**
 * A file put together of tables, of which some are parted by another delimiter, names and all: those names in the delimiter of the
 * others, so that their table is found. Rows follow in `evenRows`. Only where the file's own delimiter gives a table as well.
 */
export function evenHeaders(records: Records, tables: readonly Table[]): Records | undefined {
  const own = String.fromCharCode(records.delimiter);
  const others = DELIMITERS.filter((one) => one !== own && records.bytes.includes(one.charCodeAt(0)));
  if (tables.length === 0 || records.alone || others.length === 0) return undefined;
  const headers = new Set(tables.map(({ header }) => header));
  const found: { row: number; fields: string[] }[] = [];
  for (let row = 0; row < records.count; row++) {
    if (headers.has(row) || !mayBeHeader(records, row) || isBlankRecord(records, row)) continue;
    const [start, end] = [records.start[row]!, records.ends[records.first[row + 1]! - 1]!];
    if (end - start > LONGEST) continue;
    const text = utf8(records.bytes, start, end);
    const fields = others.map((one) => namesBy(records, row, text, one)).find((names) => names !== undefined);
    if (fields) found.push(...fields);
  }
  if (found.length === 0) return undefined;
  return scanRecords(rowsPutIn(records, found), records.delimiter);
}

/** The names on a row, and the units on the next, as a delimiter parts them, where it parts a row behind them alike. */
function namesBy(records: Records, row: number, text: string, delimiter: string) {
  const fields = fieldsIn(text, delimiter);
  const columns = columnsNamed(fields.map((field) => field.trim().replaceAll('"', '')));
  if (!columns) return undefined;
  const found = [{ row, fields }];
  for (let r = row + 1; r < Math.min(records.count, row + 1 + SOON); r++) {
    if (otherFields(records, r, columns)?.delimiter !== delimiter) continue;
    if (!mayBeHeader(records, r)) return found;
    const units = fieldsIn(utf8(records.bytes, records.start[r]!, records.ends[records.first[r + 1]! - 1]!), delimiter);
    found.push({ row: r, fields: units });
  }
  return undefined;
}

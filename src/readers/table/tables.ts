import type { Role } from '../../schemas/layout.ts';
import { anyUnit } from '../glucose/unit.ts';
import { NOTE_ROLES } from '../notes/rowNotes.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import { otherFields } from './evenRows.ts';
import { type Column, columnOf } from './header.ts';
import { cellText, fieldCount, locate, type Records } from './records.ts';

/** A run of rows under one header. Row numbers count records from 0; `to` is exclusive. */
export interface Table {
  /** -1: the table has no names. */
  header: number;
  from: number;
  to: number;
  columns: Column[];
}

export const CONTENT: Role[] = ['sensor', 'glucose', 'fingerstick', 'value', 'insulin-name', ...NOTE_ROLES];
const WHEN: Role[] = ['time', 'date', 'clock'];
export const isWhen = ({ role }: Pick<Column, 'role'>): boolean => WHEN.includes(role);
/** Rows looked at behind a header to see that times follow, and to tell columns without names apart. */
export const SAMPLE = 200;
/** A header for each day of ten years; what follows more of them is their last table's (ours). */
const MOST_TABLES = 4000;
/** As many as a sheet of a workbook may have (ISO/IEC 29500). */
export const MAX_COLUMNS = 16_384;

/** Quotes, blanks (of both kinds) and a spreadsheet's mark of text, which may stand before a digit. */
const BEFORE = new Set([0x22, 0x20, 0x27, 0xc2, 0xa0]);

/** Names never start with a digit in every cell of a row of data, which always holds a time or a number. */
export function mayBeHeader(records: Records, row: number): boolean {
  const fields = Math.min(fieldCount(records, row), MAX_COLUMNS);
  const bytes = records.bytes;
  let start = records.start[row]!;
  const firstField = records.first[row]!;
  for (let c = 0; c < fields; c++) {
    const end = records.ends[firstField + c]!;
    while (start < end && BEFORE.has(bytes[start]!)) start++;
    const b = bytes[start]!;
    if (start < end && b >= 0x30 && b <= 0x39) return false;
    start = end + 1;
  }
  return true;
}

function headerColumns(records: Records, row: number): Column[] | undefined {
  const fields = Math.min(fieldCount(records, row), MAX_COLUMNS);
  if (fields < 2) return undefined;
  return columnsNamed(Array.from({ length: fields }, (_, c) => cellText(records, row, c)));
}

/** What names say of their columns; undefined where no time is among them, or nothing that it is the time of. */
export function columnsNamed(names: readonly string[]): Column[] | undefined {
  // A sentence is no column name.
  const columns = names.map(
    (name, index): Column => (name.length <= 80 ? columnOf(index, name) : { index, name, role: 'ignore' }),
  );
  const named = (roles: Role[]) => columns.some((column) => roles.includes(column.role));
  return named(WHEN) && named(CONTENT) ? columns : undefined;
}

/** Whether a cell is a time itself, such as "Sat, 07 Mar 2026 02:26": a row of data, whatever its words mean elsewhere. */
function holdsTime(records: Records, row: number, width: number): boolean {
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  for (let c = 0; c < width; c++)
    if (locate(records, row, c, span) && readStamp(records.bytes, span.from, span.to, stamp) === SHAPE.stamp)
      return true;
  return false;
}

/** Whether a time stands under one of the time columns in any of the next rows, or no row follows at all. */
function timesFollow(records: Records, row: number, columns: Column[]): boolean {
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const last = Math.min(records.count, row + 1 + SAMPLE);
  let filled = false;
  for (let r = row + 1; r < last; r++) {
    if (otherFields(records, r, columns)) return true;
    for (const column of columns) {
      if (!isWhen(column) || !locate(records, r, column.index, span)) continue;
      filled = true;
      if (readStamp(records.bytes, span.from, span.to, stamp) !== SHAPE.none) return true;
    }
  }
  return !filled;
}

const FORMAT_WORD = /^[dmyhsajt:/.\- ]{2,20}$/i;

/** A second header row that holds nothing but units; fills them in. */
function joinUnitRow(records: Records, row: number, columns: Column[]): boolean {
  if (row >= records.count || !mayBeHeader(records, row)) return false;
  const units = columns.map((column) => cellText(records, row, column.index).replace(/^[([]|[)\]]$/g, ''));
  const written = units.filter((unit) => unit !== '');
  if (!written.some((unit) => anyUnit(unit)) || !written.every((unit) => anyUnit(unit) || FORMAT_WORD.test(unit)))
    return false;
  columns.forEach((column, i) => {
    const joined = units[i] ? { ...columnOf(column.index, `${column.name} (${units[i]})`), name: column.name } : column;
    columns[i] = joined;
  });
  return true;
}

/** Whether the next row says the same, letter by letter. */
function isRepeated({ bytes, start, count }: Records, row: number): boolean {
  if (row + 2 >= count) return false;
  const [from, next, end] = [start[row]!, start[row + 1]!, start[row + 2]!];
  if (next - from !== end - next) return false;
  for (let i = from; i < next; i++) if (bytes[i] !== bytes[i + next - from]) return false;
  return true;
}

/** Finds every header by the meaning of its words, each starting a table of its own. Empty when there is none. */
export function findTables(records: Records): Table[] {
  const tables: Table[] = [];
  for (let r = 0; r < records.count && tables.length < MOST_TABLES; r++) {
    // Of a header many times over the last one counts.
    if (!mayBeHeader(records, r) || isRepeated(records, r)) continue;
    const columns = headerColumns(records, r);
    if (!columns || holdsTime(records, r, columns.length) || !timesFollow(records, r, columns)) continue;
    const open = tables[tables.length - 1];
    if (open) open.to = r;
    const from = joinUnitRow(records, r + 1, columns) ? r + 2 : r + 1;
    tables.push({ header: r, from, to: records.count, columns });
    r = from - 1;
  }
  return tables;
}

/** The last row of names above the data that mean nothing here; numbers under unknown names are never taken for glucose. */
export function unknownNames(records: Records, columns: Column[]): number | undefined {
  let names: number | undefined;
  for (let r = 0; r < Math.min(records.count, SAMPLE); r++) {
    if (!mayBeHeader(records, r)) {
      // The data begin.
      if (locate(records, r, columns.find(isWhen)?.index ?? 0, { from: 0, to: 0 })) return names;
      continue;
    }
    const named = columns.filter((column) => cellText(records, r, column.index) !== '');
    // A row with a time is one of data, though its value begins with a sign or a word.
    if (holdsTime(records, r, columns.length)) continue;
    if (named.length >= 2 && named.some((column) => column.role === 'glucose')) names = r;
  }
  return names;
}

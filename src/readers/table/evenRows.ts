import { bytesOf, utf8 } from '../../bytes/text.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import type { Column } from './header.ts';
import { fieldCount, locate, type Records } from './records.ts';
import type { Table } from './tables.ts';

/** The comma last: it is a decimal mark as well. */
export const DELIMITERS = [';', '\t', '|', ','];
const WHEN: readonly string[] = ['time', 'date', 'clock'];
/** Longer rows are not put right (ours). */
export const LONGEST = 20_000;
const stamp = newStamp();

/** The text with the rows of its tables that another delimiter parts brought to the file's own, and what was done. */
export interface Evened {
  bytes: Uint8Array;
  count: number;
  /** The first such row. */
  row: number;
  delimiter: string;
}

/**
 * Rows pasted from elsewhere: the file's delimiter does not give them as many fields as the header has, another one does
 * exactly. Undefined where there are none. Line numbers stay what they are.
 */
export function evenRows(records: Records, tables: Table[]): Evened | undefined {
  if (records.alone) return undefined;
  const found: { row: number; fields: string[] }[] = [];
  const own = String.fromCharCode(records.delimiter);
  if (!DELIMITERS.some((one) => one !== own && records.bytes.includes(one.charCodeAt(0)))) return undefined;
  let first = '';
  for (const { from, to, columns } of tables) {
    for (let row = from; row < to; row++) {
      const parted = otherFields(records, row, columns);
      if (!parted) continue;
      first ||= parted.delimiter;
      found.push({ row, fields: parted.fields });
    }
  }
  if (found.length === 0) return undefined;
  const bytes = rowsPutIn(records, found);
  return { bytes, count: found.length, row: found[0]!.row, delimiter: first };
}

/** The text with other fields in some rows, in their order. */
export function rowsPutIn(records: Records, found: readonly { row: number; fields: string[] }[]): Uint8Array {
  const own = String.fromCharCode(records.delimiter);
  const pieces: Uint8Array[] = [];
  let at = 0;
  for (const { row, fields } of found) {
    pieces.push(records.bytes.subarray(at, records.start[row]!), bytesOf(fields.map(quoted).join(own)));
    at = records.ends[records.first[row + 1]! - 1]!;
  }
  pieces.push(records.bytes.subarray(at));
  const bytes = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let to = 0;
  for (const piece of pieces) {
    bytes.set(piece, to);
    to += piece.length;
  }
  return bytes;
}

/**
 * The fields of a row to which another delimiter than the file's gives exactly as many as the header has, and its own does not. Where
 * its own gives several, a time must stand where the header has one: a date with a comma in it is parted by chance, also into as many
 * as the header has.
 */
export function otherFields(
  records: Records,
  row: number,
  columns: readonly Column[],
): { fields: string[]; delimiter: string } | undefined {
  const width = columns.length;
  const count = fieldCount(records, row);
  if (width < 2 || (count === width && timeFits(records, row, columns))) return undefined;
  const [start, end] = [records.start[row]!, records.ends[records.first[row + 1]! - 1]!];
  if (end - start > LONGEST || !othersIn(records.bytes, start, end, width - 1)) return undefined;
  const text = utf8(records.bytes, start, end);
  for (const delimiter of DELIMITERS) {
    if (delimiter.charCodeAt(0) === records.delimiter) continue;
    const fields = fieldsIn(text, delimiter);
    if (fields.length === width && (count === 1 || timeStands(fields, columns))) return { fields, delimiter };
  }
  return undefined;
}

/** Whether another delimiter than the file's parts a row into a time, or a day and a clock, and something else: a row of data, of whatever table. */
export function timedByOther(records: Records, row: number): boolean {
  const [start, end] = [records.start[row]!, records.ends[records.first[row + 1]! - 1]!];
  if (end - start > LONGEST || !othersIn(records.bytes, start, end, 1)) return false;
  const text = utf8(records.bytes, start, end);
  return DELIMITERS.some((delimiter) => {
    if (delimiter.charCodeAt(0) === records.delimiter) return false;
    const filled = fieldsIn(text, delimiter).filter((field) => field.trim() !== '');
    const shapes = filled.map(shapeOf);
    const [first, ...rest] = shapes;
    return rest.length > 0 && (first === SHAPE.stamp || (first === SHAPE.day && rest.includes(SHAPE.clock)));
  });
}

/** Whether the file's own delimiter leaves a time where the header has one, or nothing there at all. */
function timeFits(records: Records, row: number, columns: readonly Column[]): boolean {
  const span = { from: 0, to: 0 };
  let filled = false;
  for (const { role, index } of columns) {
    if (!WHEN.includes(role) || !locate(records, row, index, span)) continue;
    filled = true;
    if (readStamp(records.bytes, span.from, span.to, stamp) !== SHAPE.none) return true;
  }
  return !filled;
}

function timeStands(fields: readonly string[], columns: readonly Column[]): boolean {
  const whens = columns.filter(({ role }) => WHEN.includes(role));
  return whens.length === 0 || whens.some(({ index }) => shapeOf(fields[index] ?? '') !== SHAPE.none);
}

function shapeOf(field: string): number {
  const bytes = bytesOf(field.trim().replaceAll('"', ''));
  return readStamp(bytes, 0, bytes.length, stamp);
}

/** Whether any of the delimiters comes that often; most rows that are short have none of them. */
function othersIn(bytes: Uint8Array, from: number, to: number, wanted: number): boolean {
  return DELIMITERS.some((delimiter) => {
    const code = delimiter.charCodeAt(0);
    let left = wanted;
    for (let i = from; i < to && left > 0; i++) if (bytes[i] === code) left--;
    return left === 0;
  });
}

/** Fields of one row, quotes kept as they stand. */
export function fieldsIn(text: string, delimiter: string): string[] {
  const fields: string[] = [];
  let quoted = false;
  let start = 0;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '"') quoted = !quoted;
    else if (text[i] === delimiter && !quoted) {
      fields.push(text.slice(start, i));
      start = i + 1;
    }
  }
  fields.push(text.slice(start));
  return fields;
}

const quoted = (field: string): string =>
  field.startsWith('"') && field.endsWith('"') && field.length > 1 ? field : `"${field.replaceAll('"', '""')}"`;

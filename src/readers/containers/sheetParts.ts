import { zip } from '../../bytes/pack.ts';
import { bytesOf, find, growingText, latin1 } from '../../bytes/text.ts';
import { type Cell, factsOf, joinedFacts, type SheetFacts, textWith, writtenAlike } from './sheetText.ts';
import type { Packed } from './zip.ts';

/** Bytes of a sheet's XML that are read at a time: some 8,000 rows of three cells (ours). */
export const PART = 1_000_000;
const SHEETS = 'xl/worksheets/';
const EMPTY = bytesOf('<worksheet><sheetData/></worksheet>');
/** Bytes in which a row says which it is. */
const ROW_HEAD = 200;
const CLOSE = '</row>';

/** Reads a workbook whole: its sheets in their order. */
export type ReadBook = (bytes: Uint8Array) => Promise<{ sheet: string; rows: Cell[][] }[]>;

const isSheet = ({ name }: Packed): boolean => name.startsWith(SHEETS) && name.endsWith('.xml');

/** Whether a workbook holds so much that it is better read in parts. */
export const isLarge = (files: readonly Packed[], part = PART): boolean =>
  files.filter(isSheet).reduce((sum, { bytes }) => sum + bytes.length, 0) > part;

/**
 * The sheets of a large workbook as text, read some ten thousand rows at a time: a library that keeps every cell as an object until the
 * last is read took a gigabyte for a year of minutes, and found no room on its stack for more. Each part is given to it as a workbook of
 * its own, with the words and styles of the whole. Undefined where the parts cannot be told apart.
 */
export async function textInParts(
  files: readonly Packed[],
  read: ReadBook,
  part = PART,
): Promise<{ sheet: string; text: Uint8Array }[] | undefined> {
  const sheets = files.filter(isSheet);
  const shared = files.filter((file) => !isSheet(file));
  // The words of the whole are read with each part: they may take as long as the part, and no longer.
  const size = Math.max(
    part,
    shared.reduce((sum, { bytes }) => sum + bytes.length, 0),
  );
  const found: { at: number; sheet: string; text: Uint8Array }[] = [];
  let names: string[] = [];
  for (const { name, bytes } of sheets) {
    const rowsOf = async (piece: Uint8Array): Promise<{ at: number; rows: Cell[][] } | undefined> => {
      const others = sheets.map((one) => ({ name: one.name, bytes: one.name === name ? piece : EMPTY }));
      const book = await read(zip([...shared, ...others], 0));
      names = book.map(({ sheet }) => sheet);
      const filled = book.flatMap(({ rows }, at) => (rows.length > 0 ? [{ at, rows }] : []));
      return filled.length > 1 ? undefined : (filled[0] ?? { at: -1, rows: [] });
    };
    const whole = await oneSheet(partsOf(bytes, size), rowsOf);
    if (!whole) return undefined;
    if (whole.at >= 0) found.push({ at: whole.at, sheet: names[whole.at]!, text: whole.text });
  }
  return found.sort((a, b) => a.at - b.at);
}

async function oneSheet(
  pieces: Part[],
  rowsOf: (piece: Uint8Array) => Promise<{ at: number; rows: Cell[][] } | undefined>,
): Promise<{ at: number; text: Uint8Array } | undefined> {
  const parts: { blank: number; rows: number; own: SheetFacts; text: Uint8Array }[] = [];
  let at = -1;
  let next = 0;
  let facts: SheetFacts | undefined;
  for (const { xml, above } of pieces) {
    const got = await rowsOf(xml());
    if (!got) return undefined;
    at = Math.max(at, got.at);
    // Empty rows between two parts belong to neither.
    const rows = got.rows.length === 0 ? [] : [...Array.from({ length: above - next }, (): Cell[] => []), ...got.rows];
    const own = factsOf(rows);
    facts = facts ? joinedFacts(facts, own) : own;
    parts.push({ blank: above - next, rows: rows.length, own, text: bytesOf(textWith(rows, own)) });
    next += rows.length;
  }
  const all = growingText();
  let first = true;
  for (const [i, { blank, rows, own, text }] of parts.entries()) {
    if (rows === 0) continue;
    if (!first) all.add('\n');
    first = false;
    if (writtenAlike(own, facts!)) all.addBytes(text);
    else {
      const again = (await rowsOf(pieces[i]!.xml()))?.rows ?? [];
      all.add(textWith([...Array.from({ length: blank }, (): Cell[] => []), ...again], facts!));
    }
    parts[i]!.text = EMPTY;
  }
  return { at, text: all.bytes() };
}

/** Whole rows of a sheet as a sheet of their own, in which they are counted from 1; `above`: rows of the whole sheet above them. */
export interface Part {
  xml: () => Uint8Array;
  above: number;
}

/** A sheet's XML in parts of whole rows; in one where rows do not say which they are. */
export function partsOf(xml: Uint8Array, size: number): Part[] {
  const start = find(xml, '<row', Math.max(0, find(xml, '<sheetData')));
  const end = find(xml, '</sheetData');
  // Marks of rows in a comment or in plain text are none.
  if (xml.length <= size || start < 0 || end < start || find(xml, '<!') >= 0) return [{ xml: () => xml, above: 0 }];
  const parts: Part[] = [];
  const [head, tail] = [xml.subarray(0, start), xml.subarray(end)];
  let above = 0;
  for (let from = start; from < end; ) {
    let to = end;
    let next = 0;
    for (let close = find(xml, CLOSE, from + size); close >= 0 && close < end; close = find(xml, CLOSE, close + 1)) {
      next = rowAt(xml, close + CLOSE.length, end);
      if (next <= above) continue;
      to = close + CLOSE.length;
      break;
    }
    const [rows, before] = [xml.subarray(from, to), above];
    parts.push({ xml: () => joined(head, before === 0 ? rows : countedFrom(rows, before), tail), above });
    from = to;
    above = next - 1;
  }
  return parts;
}

/** The number of the row that begins there; 0 where it does not say it. */
function rowAt(xml: Uint8Array, at: number, end: number): number {
  const found = /^\s*<row\s[^>]*?\br\s*=\s*["'](\d{1,7})["']/.exec(latin1(xml, at, Math.min(end, at + ROW_HEAD)));
  return found ? Number(found[1]) : 0;
}

/** The library makes a row for each that is missing above the first. */
const countedFrom = (rows: Uint8Array, above: number): Uint8Array =>
  latin1Bytes(
    latin1(rows).replace(
      /(<(?:row|c)\s(?:[^>]*?\s)?r\s*=\s*["'][A-Z]*)(\d+)/g,
      (_, before: string, row: string) => `${before}${Number(row) - above}`,
    ),
  );

function latin1Bytes(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}

function joined(...pieces: Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

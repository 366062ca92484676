import { bytesOf, latin1 } from '../../bytes/text.ts';
import type { Input } from '../../model/input.ts';
import { DAY_MS } from '../../time/calendar.ts';
import { isPlainXml } from './workbookXml.ts';
import { unzip } from './zip.ts';

/** A sheet's rows as read: numbers, words, true dates. */
type Cell = string | number | boolean | Date | null;

/** Cells a sheet may span; one cell in the farthest corner would make a table of 17 billion (ours). */
const MOST_CELLS = 30_000_000;
const MOST_COLUMNS = 1000;
/** How deep archives in archives are opened here; what is packed deeper stays an input, which is told as unread (ours). */
const DEEPEST = 1;

/**
 * Opens the workbooks (.xlsx, ISO/IEC 29500) among the inputs, also those inside a zip archive: each sheet becomes an
 * input of delimited text whose lines are the rows of the sheet, with formulas as their stored values and true dates in
 * ISO form. What else an archive holds is handed on opened, all other inputs as they are. The library for it is
 * loaded only when there is a workbook.
 */
export async function openWorkbooks(inputs: readonly Input[], depth = 0): Promise<Input[]> {
  const opened: Input[] = [];
  for (const input of inputs) {
    const { bytes } = input;
    const packed = bytes[0] === 0x50 && bytes[1] === 0x4b ? unzip(bytes) : undefined;
    if (!packed?.ok || packed.files.length === 0 || depth > DEEPEST) opened.push(input);
    else if (packed.workbook) opened.push(...((await sheetsOf(input, packed.files)) ?? [input]));
    else if (!packed.files.some((file) => isZip(file.bytes))) opened.push(...inside(input, packed.files));
    else opened.push(...(await openWorkbooks(inside(input, packed.files), depth + 1)));
  }
  return opened;
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3;

function inside(input: Input, files: { name: string; bytes: Uint8Array }[]): Input[] {
  return files.map((file) => ({ name: `${input.name}/${file.name}`, bytes: file.bytes }));
}

async function sheetsOf(input: Input, files: { name: string; bytes: Uint8Array }[]): Promise<Input[] | undefined> {
  if (!files.some(({ name }) => name === 'xl/workbook.xml') || files.some(tooWide)) return undefined;
  if (!files.every(({ name, bytes }) => !/\.(xml|rels)$/i.test(name) || isPlainXml(bytes))) return undefined;
  try {
    const { default: readWorkbook } = await import('read-excel-file/universal');
    const copy = input.bytes.slice();
    const sheets = await readWorkbook(copy.buffer as ArrayBuffer, { trim: false });
    const made = sheets
      .map(({ sheet, data }) => ({ name: `${input.name}/${sheet}`, rows: data as Cell[][] }))
      .filter(({ rows }) => rows.some((row) => row.some((cell) => cell !== null)))
      .map(({ name, rows }) => ({ name, bytes: bytesOf(sheetText(rows)), form: 'sheet' as const }));
    return made.length > 0 ? made : [{ name: input.name, bytes: new Uint8Array(0), form: 'sheet' }];
  } catch {
    return undefined;
  }
}

/** Whether the cells of a sheet lie so far out that the table between them could not be kept. */
function tooWide({ name, bytes }: { name: string; bytes: Uint8Array }): boolean {
  if (!name.startsWith('xl/worksheets/')) return false;
  const text = latin1(bytes);
  let row = 0;
  let column = 0;
  for (const [, letters, digits] of text.matchAll(/\sr\s*=\s*["']([A-Z]*)(\d+)["']/g)) {
    row = Math.max(row, Number(digits));
    let n = 0;
    for (const letter of letters!) n = n * 26 + letter.charCodeAt(0) - 64;
    column = Math.max(column, n);
  }
  return column > MOST_COLUMNS || row * Math.max(1, column) > MOST_CELLS;
}

/** One line a row, so that line numbers are the sheet's own. */
function sheetText(rows: Cell[][]): string {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 2);
  const forms = Array.from({ length: width }, (_, column) => dateForm(rows, column));
  return rows
    .map((row) => Array.from({ length: width }, (_, c) => cellText(row[c] ?? null, forms[c]!)).join(','))
    .join('\n');
}

/** Dates of a column that never carry a time are days; those of the first day of the count are times of day alone. */
function dateForm(rows: Cell[][], column: number): 'day' | 'clock' | 'stamp' {
  let days = true;
  let clocks = true;
  for (const row of rows) {
    const cell = row[column];
    if (!(cell instanceof Date)) continue;
    if (cell.getTime() % DAY_MS !== 0) days = false;
    if (!isFirstDay(cell)) clocks = false;
  }
  return clocks ? 'clock' : days ? 'day' : 'stamp';
}

/** Workbooks count days from the end of 1899 or from 1904; a time of day alone is a part of day 0. */
function isFirstDay(date: Date): boolean {
  const day = date.toISOString().slice(0, 10);
  return day === '1899-12-30' || day === '1899-12-31' || day === '1904-01-01';
}

function cellText(cell: Cell, form: 'day' | 'clock' | 'stamp'): string {
  if (cell === null) return '';
  if (cell instanceof Date) {
    if (Number.isNaN(cell.getTime())) return '';
    // Fractions of a day are not exact: the nearest second is what was meant.
    const iso = new Date(Math.round(cell.getTime() / 1000) * 1000).toISOString();
    return form === 'day'
      ? iso.slice(0, 10)
      : form === 'clock'
        ? iso.slice(11, 19)
        : iso.slice(0, 19).replace('T', ' ');
  }
  if (typeof cell === 'number') return String(cell);
  return `"${String(cell)
    .replaceAll('"', '""')
    .replace(/[\r\n]+/g, ' ')}"`;
}

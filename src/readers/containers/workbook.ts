import { bytesOf, latin1 } from '../../bytes/text.ts';
import type { Input } from '../../model/input.ts';
import { CLOSED } from './containers.ts';
import { isOldWorkbook, isOpenSheet, otherSheets } from './otherWorkbooks.ts';
import { isLarge, type ReadBook, textInParts } from './sheetParts.ts';
import { type Cell, sheetText } from './sheetText.ts';
import { isPlainXml } from './workbookXml.ts';
import { inside, isZip, type Packed, unzip } from './zip.ts';

/** Cells a sheet may span; one cell in the farthest corner would make a table of 17 billion (ours). */
const MOST_CELLS = 30_000_000;
const MOST_COLUMNS = 1000;
/** Cells that a workbook may write out: two million of them take the library a gigabyte (ours). */
const MOST_WRITTEN = 6_000_000;
/** How many archives around an archive or a workbook are opened; what lies deeper is told as unread (ours). */
const DEEPEST = 2;

/**
 * Opens the workbooks (.xlsx, ISO/IEC 29500; .xls; OpenDocument sheets) and the zip archives among the inputs, those inside
 * an archive too, each once: a sheet becomes an input of delimited text whose lines are the rows of the sheet, with formulas
 * as their stored values and true dates in ISO form. What could not be opened says why; all other inputs are as they are.
 * The library for workbooks, which unpacks what it reads by itself, is loaded only when there is one.
 */
export async function openWorkbooks(inputs: readonly Input[], depth = 0): Promise<Input[]> {
  const opened: Input[] = [];
  for (const input of inputs) opened.push(...(await openOne(input, depth)));
  return opened;
}

async function openOne(input: Input, depth: number): Promise<Input[]> {
  const { bytes, form } = input;
  if (form !== undefined) return [input];
  if (isOldWorkbook(bytes)) return (await laidOut(input, () => others(bytes))) ?? [input];
  if (!isZip(bytes)) return [input];
  if (depth > DEEPEST) return [{ ...input, form: 'too-deep' }];
  const packed = unzip(bytes);
  if (!packed.ok) return [{ ...input, form: CLOSED[packed.why] }];
  const { files } = packed;
  if (files.length === 0 && !packed.workbook) return [{ ...input, form: 'file-empty' }];
  const sheets = isOpenSheet(files)
    ? await laidOut(input, () => others(bytes, files))
    : packed.workbook
      ? await sheetsOf(input, files)
      : undefined;
  if (sheets) return sheets;
  return packed.workbook ? [{ ...input, form: 'workbook' }] : openWorkbooks(inside(input, files), depth + 1);
}

async function others(bytes: Uint8Array, files?: Packed[]) {
  const sheets = await otherSheets(bytes, files);
  return Array.isArray(sheets) ? asText(sheets) : sheets;
}

async function sheetsOf(input: Input, files: { name: string; bytes: Uint8Array }[]): Promise<Input[] | undefined> {
  if (!files.some(({ name }) => name === 'xl/workbook.xml') || tooWide(files)) return undefined;
  if (!files.every(({ name, bytes }) => !/\.(xml|rels)$/i.test(name) || isPlainXml(bytes))) return undefined;
  return laidOut(input, async () => {
    const { default: readWorkbook } = await import('read-excel-file/universal');
    const read: ReadBook = async (bytes) => {
      const sheets = await readWorkbook(bytes.slice().buffer as ArrayBuffer, { trim: false });
      return sheets.map(({ sheet, data }) => ({ sheet, rows: data as Cell[][] }));
    };
    return (isLarge(files) ? await textInParts(files, read) : undefined) ?? asText(await read(input.bytes));
  });
}

/** Sheets that hold anything, each as text of its own. */
const asText = (sheets: { sheet: string; rows: Cell[][] }[]): { sheet: string; text: Uint8Array }[] =>
  sheets
    .filter(({ rows }) => rows.some((row) => row.some((cell) => cell !== null)))
    .map(({ sheet, rows }) => ({ sheet, text: bytesOf(sheetText(rows)) }));

/** Each sheet as an input of its own; undefined where it could not be opened. */
async function laidOut(
  input: Input,
  open: () => Promise<{ sheet: string; text: Uint8Array }[] | 'locked' | undefined>,
): Promise<Input[] | undefined> {
  try {
    const sheets = await open();
    if (sheets === 'locked') return [{ ...input, form: 'workbook-locked' }];
    if (sheets === undefined) return undefined;
    const filled = sheets.map(({ sheet, text }) => ({
      name: `${input.name}/${sheet}`,
      bytes: text,
      form: 'sheet' as const,
    }));
    return filled.length > 0 ? filled : [{ name: input.name, bytes: new Uint8Array(0), form: 'sheet' }];
  } catch {
    return undefined;
  }
}

/** Whether the cells of a sheet lie so far out that the table between them could not be kept, or those of all sheets are too many. */
export function tooWide(files: { name: string; bytes: Uint8Array }[], most = MOST_WRITTEN): boolean {
  let cells = 0;
  for (const { name, bytes } of files) {
    if (!name.startsWith('xl/worksheets/')) continue;
    let row = 0;
    let column = 0;
    for (const [, letters, digits] of latin1(bytes).matchAll(/\sr\s*=\s*["']([A-Z]*)(\d+)["']/g)) {
      if (letters !== '' && ++cells > most) return true;
      row = Math.max(row, Number(digits));
      let n = 0;
      for (const letter of letters!) n = n * 26 + letter.charCodeAt(0) - 64;
      column = Math.max(column, n);
    }
    if (column > MOST_COLUMNS || row * Math.max(1, column) > MOST_CELLS) return true;
  }
  return false;
}

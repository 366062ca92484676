import { bytesOf, latin1 } from '../../bytes/text.ts';
import type { Input } from '../../model/input.ts';
import { isOldWorkbook, isOpenSheet, otherSheets } from './otherWorkbooks.ts';
import { type Cell, sheetText } from './sheetText.ts';
import { isPlainXml } from './workbookXml.ts';
import { unzip } from './zip.ts';

/** Cells a sheet may span; one cell in the farthest corner would make a table of 17 billion (ours). */
const MOST_CELLS = 30_000_000;
const MOST_COLUMNS = 1000;
/** How deep archives in archives are opened here; what is packed deeper stays an input, which is told as unread (ours). */
const DEEPEST = 1;

/**
 * Opens the workbooks (.xlsx, ISO/IEC 29500; .xls; OpenDocument sheets) among the inputs, also those inside a zip archive: each sheet becomes an
 * input of delimited text whose lines are the rows of the sheet, with formulas as their stored values and true dates in
 * ISO form. What else an archive holds is handed on opened, all other inputs as they are. The library for it is
 * loaded only when there is a workbook.
 */
export async function openWorkbooks(inputs: readonly Input[], depth = 0): Promise<Input[]> {
  const opened: Input[] = [];
  for (const input of inputs) {
    const { bytes } = input;
    const packed = bytes[0] === 0x50 && bytes[1] === 0x4b ? unzip(bytes) : undefined;
    if (isOldWorkbook(bytes)) opened.push(...(await laidOut(input, () => otherSheets(bytes))));
    else if (!packed?.ok || packed.files.length === 0 || depth > DEEPEST) opened.push(input);
    else if (isOpenSheet(packed.files)) opened.push(...(await laidOut(input, () => otherSheets(bytes, packed.files))));
    else if (packed.workbook) opened.push(...((await sheetsOf(input, packed.files)) ?? [input]));
    else if (!packed.files.some(({ bytes: inner }) => isZip(inner) || isOldWorkbook(inner)))
      opened.push(...inside(input, packed.files));
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
  return laidOut(input, async () => {
    const { default: readWorkbook } = await import('read-excel-file/universal');
    const copy = input.bytes.slice();
    const sheets = await readWorkbook(copy.buffer as ArrayBuffer, { trim: false });
    return sheets.map(({ sheet, data }) => ({ sheet, rows: data as Cell[][] }));
  });
}

/** Each sheet as text of its own; the input itself where it could not be opened. */
async function laidOut(
  input: Input,
  open: () => Promise<{ sheet: string; rows: Cell[][] }[] | 'locked' | undefined>,
): Promise<Input[]> {
  try {
    const sheets = await open();
    if (sheets === 'locked') return [{ ...input, form: 'locked' }];
    if (sheets === undefined) return [input];
    const filled = sheets
      .filter(({ rows }) => rows.some((row) => row.some((cell) => cell !== null)))
      .map(({ sheet, rows }) => ({
        name: `${input.name}/${sheet}`,
        bytes: bytesOf(sheetText(rows)),
        form: 'sheet' as const,
      }));
    return filled.length > 0 ? filled : [{ name: input.name, bytes: new Uint8Array(0), form: 'sheet' }];
  } catch {
    return [input];
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

import { find, latin1 } from '../../bytes/text.ts';
import { DAY_MS } from '../../time/calendar.ts';
import { type Cell, MARCH_1900 } from './sheetText.ts';
import { isPlainXml } from './workbookXml.ts';
import type { Packed } from './zip.ts';

/** Bytes of an old workbook; none of people's is near it (ours). */
const LARGEST_OLD = 64 * 1024 * 1024;
/** Cells that an OpenDocument sheet may come to once its repeated rows are written out (ours). */
const MOST_CELLS = 5_000_000;

/** Whether it is a compound file (MS-CFB), the container of old workbooks and of newer ones with a password. */
export function isOldWorkbook(bytes: Uint8Array): boolean {
  return [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1].every((byte, i) => bytes[i] === byte);
}

/** Whether an archive is an OpenDocument spreadsheet (ISO/IEC 26300-3, 3.3: its first file tells). */
export function isOpenSheet(files: Packed[]): boolean {
  const kind = files.find(({ name }) => name === 'mimetype');
  return kind !== undefined && latin1(kind.bytes).startsWith('application/vnd.oasis.opendocument.spreadsheet');
}

/**
 * The sheets of an old workbook (MS-XLS) or of an OpenDocument one (`files`: what is packed in it), with formulas as their
 * stored values; "locked" where a password is needed, undefined where it is nothing that can be read. The library for it is
 * loaded here and only here.
 */
export async function otherSheets(
  bytes: Uint8Array,
  files?: Packed[],
): Promise<{ sheet: string; rows: Cell[][] }[] | 'locked' | undefined> {
  if (files) {
    const manifest = files.find(({ name }) => name === 'META-INF/manifest.xml');
    if (manifest && find(manifest.bytes, 'encryption-data') >= 0) return 'locked';
    const xml = files.filter(({ name }) => /\.xml$/i.test(name));
    if (!xml.every((file) => isPlainXml(file.bytes)) || !xml.every(isBounded)) return undefined;
  } else if (bytes.length > LARGEST_OLD) return undefined;
  const { read, utils } = await import('@e965/xlsx');
  let book: ReturnType<typeof read>;
  try {
    book = read(bytes, {
      type: 'array',
      dense: true,
      cellDates: true,
      UTC: true,
      cellFormula: false,
      cellHTML: false,
      cellText: false,
    });
  } catch (error) {
    if (/password|encrypt/i.test(String(error))) return 'locked';
    return undefined;
  }
  return book.SheetNames.map((sheet) => {
    const cells = book.Sheets[sheet]!;
    const ref = cells['!ref'];
    // From the first row on, so that a row keeps its number.
    const range = ref === undefined ? undefined : { s: { r: 0, c: 0 }, e: utils.decode_range(ref).e };
    const rows = range
      ? utils.sheet_to_json<unknown[]>(cells, { header: 1, raw: true, UTC: true, defval: null, blankrows: true, range })
      : [];
    return { sheet, rows: rows.map((row) => row.map((cell) => cellOf(files ? cell : fromDayZero(cell)))) };
  });
}

/** The library shows the first sixty day numbers of an old workbook as the program did that took 1900 for a leap year: a day late. */
const fromDayZero = (value: unknown): unknown =>
  value instanceof Date && value.getTime() < MARCH_1900 ? new Date(value.getTime() - DAY_MS) : value;

const cellOf = (value: unknown): Cell =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' || value instanceof Date
    ? value
    : null;

/** Whether the rows of an OpenDocument sheet that hold something stay countable once they are repeated. */
function isBounded({ name, bytes }: Packed): boolean {
  if (name !== 'content.xml') return true;
  const text = latin1(bytes);
  let cells = 0;
  let times = 1;
  for (const [tag] of text.matchAll(/<table:(?:table-row|table-cell|covered-table-cell)\b[^>]*>/g)) {
    const repeated = Number(/-repeated="(\d{1,9})"/.exec(tag)?.[1] ?? 1);
    if (tag.startsWith('<table:table-row')) times = repeated;
    // A cell without content ends at once, and is only a place.
    else if (!tag.endsWith('/>')) cells += repeated * times;
    if (cells > MOST_CELLS) return false;
  }
  return true;
}

import { utils, write } from '@e965/xlsx';
import { describe, expect, it, test } from 'vitest';
import { utf8 } from '../../src/bytes/text.ts';
import { isLarge, partsOf, textInParts } from '../../src/readers/containers/sheetParts.ts';
import { type Cell, sheetText } from '../../src/readers/containers/sheetText.ts';
import { unzip } from '../../src/readers/containers/zip.ts';
import { clock, day, number, type SheetRows, stamp, text, workbookOf } from '../support/workbook.ts';

const DAY = 46027;
const SMALL = 1500;

async function read(bytes: Uint8Array): Promise<{ sheet: string; rows: Cell[][] }[]> {
  const { default: readWorkbook } = await import('read-excel-file/universal');
  const sheets = await readWorkbook(bytes.slice().buffer as ArrayBuffer, { trim: false });
  return sheets.map(({ sheet, data }) => ({ sheet, rows: data as Cell[][] }));
}

function filesOf(book: Uint8Array) {
  const packed = unzip(book);
  if (!packed.ok) throw new Error(packed.why);
  return packed.files;
}

/** What the library for workbooks (a general one) gives of the whole, and what came of the parts. */
async function both(book: Uint8Array) {
  const whole = (await read(book)).filter(({ rows }) => rows.length > 0);
  const parts = await textInParts(filesOf(book), read, SMALL);
  return {
    whole: whole.map(({ sheet, rows }) => [sheet, sheetText(rows)]),
    parts: parts?.map(({ sheet, text: bytes }) => [sheet, utf8(bytes)]),
  };
}

const rows = (n: number, row: (i: number) => SheetRows[number], from = 2): SheetRows => ({
  1: [text('Time'), text('Glucose (mg/dL)'), text('Note')],
  ...Object.fromEntries(Array.from({ length: n }, (_, i) => [from + i, row(i)])),
});

describe('a large workbook read in parts gives what the whole gives', () => {
  test.each<[string, Record<string, SheetRows>]>([
    ['times and numbers', { Log: rows(90, (i) => [stamp(DAY + i / 288), number(100 + i)]) }],
    [
      'days until the last row',
      { Log: rows(90, (i) => [i === 88 ? stamp(DAY + 0.5) : day(DAY + i), number(100 + i)]) },
    ],
    ['times of day until one is a date', { Log: rows(90, (i) => [i === 88 ? stamp(DAY + 0.5) : clock(i / 96)]) }],
    [
      'numbers shown as dates',
      { Log: rows(90, (i) => [stamp(DAY + i / 288), i % 9 === 4 ? stamp(1 + i / 10) : number(3)]) },
    ],
    [
      'a column of few rows',
      { Log: rows(90, (i) => [stamp(DAY + i / 288), number(100), i === 70 ? text('a "b", c') : null]) },
    ],
    [
      'a title, and holes of many rows',
      { Log: { ...rows(60, (i) => [stamp(DAY + i / 288), number(i)], 9), 300: [text('Mean'), number(9)] } },
    ],
    [
      'several sheets, one of them empty',
      {
        Log: rows(70, (i) => [stamp(DAY + i / 288), number(100 + i)]),
        Empty: {},
        Few: rows(2, (i) => [stamp(DAY + i), number(7)]),
        More: rows(70, (i) => [stamp(DAY + i / 96), number(50 + i), text(`n${i}`)]),
      },
    ],
  ])('%s', async (_, sheets) => {
    const { whole, parts } = await both(workbookOf(sheets));
    expect(parts).toEqual(whole);
  });
  it('with the words of all sheets in one list, as most programs keep them', async () => {
    const table = Array.from({ length: 300 }, (_, i) => [
      `2026-01-${1 + (i % 28)} 07:00`,
      i,
      `word ${i % 40}`,
      'ä < ö & "ü"',
    ]);
    const book = utils.book_new();
    utils.book_append_sheet(book, utils.aoa_to_sheet(table), 'One');
    utils.book_append_sheet(book, utils.aoa_to_sheet(table.slice(0, 120)), 'Two');
    const { whole, parts } = await both(
      new Uint8Array(write(book, { type: 'array', bookType: 'xlsx', bookSST: true })),
    );
    expect(parts).toEqual(whole);
  });
});

describe('where a sheet is parted', () => {
  const xml = (rest: string): Uint8Array =>
    new TextEncoder().encode(`<worksheet><sheetData>${rest}</sheetData></worksheet>`);
  const row = (attributes: string): string => `<row${attributes}><c r="A1"><v>1</v></c></row>`;
  it('only before rows that say which they are, and never where a mark of one could be text', () => {
    const numbered = Array.from({ length: 50 }, (_, i) => row(` r="${i + 1}"`)).join('');
    expect(partsOf(xml(numbered), 300).length).toBeGreaterThan(5);
    expect(partsOf(xml(Array.from({ length: 50 }, () => row('')).join('')), 300)).toHaveLength(1);
    expect(partsOf(xml(`${numbered}<!-- </row> -->`), 300)).toHaveLength(1);
    expect(partsOf(xml(numbered), 1_000_000)).toHaveLength(1);
  });
  it('a fortnight is not', () => {
    const book = workbookOf({ Log: rows(4032, (i) => [stamp(DAY + i / 288), number(100 + (i % 90))]) });
    expect(isLarge(filesOf(book))).toBe(false);
  });
});

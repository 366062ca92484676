import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it, test } from 'vitest';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { readInputs } from '../../src/readers/index.ts';
import { clock, day, fault, formula, number, type SheetRows, stamp, text, workbookOf } from '../support/workbook.ts';
import { TODAY } from './digest.ts';

// Day numbers: 46027 is 2026-01-05 counted from 1899-12-30, 44565 the same day counted from 1904 (interchange notes of
// the trade, tried in a spreadsheet program); SpreadsheetML by ISO/IEC 29500. The workbooks are made by hand.
const DAY = 46027;
const AT_8 = 1 / 3;
const HEAD = [text('Time'), text('Glucose (mg/dL)')];

async function read(bytes: Uint8Array, name = 'log.xlsx') {
  const files = readInputs(await openWorkbooks([{ name, bytes }]), { today: TODAY });
  return files.map(({ name: file, kind, readings, notes, issues, fates }) => ({
    file,
    kind,
    readings: Array.from({ length: readings.count }, (_, i) => {
      const at = new Date(readings.wall[i]!).toISOString().slice(0, 19).replace('T', ' ');
      return `${readings.line[i]}: ${at} ${readings.native[i]}`;
    }),
    notes: notes.map((note) => `${note.origin.line}: ${note.kind} ${note.amount ?? note.text ?? ''}`),
    issues: issues.map(({ code, level, origin }) => `${level} ${code} ${origin?.line ?? 0}`),
    fates: fates.map((fate) => fate[0]).join(''),
  }));
}
const one = async (rows: SheetRows, more = {}) => (await read(workbookOf({ Log: rows }, more)))[0]!;

describe('workbooks', () => {
  it('gives each sheet as a file of its own, with the sheet’s own row numbers', async () => {
    const book = workbookOf({
      Sensor: { 3: HEAD, 5: [stamp(DAY + AT_8), number(102)], 6: [stamp(DAY + AT_8 + 5 / 1440), number(104)] },
      Empty: {},
      Meals: { 1: [text('Time'), text('Carbs (g)')], 2: [stamp(DAY + 0.5), number(45)] },
    });
    expect(await read(book)).toMatchObject([
      {
        file: 'log.xlsx/Sensor',
        kind: 'workbook',
        readings: ['5: 2026-01-05 08:00:00 102', '6: 2026-01-05 08:05:00 104'],
      },
      { file: 'log.xlsx/Meals', notes: ['2: meal 45'] },
    ]);
  });

  it('counts days from 1904 where the workbook says so', async () => {
    const file = await one({ 1: HEAD, 2: [stamp(DAY - 1462 + AT_8), number(102)] }, { date1904: true });
    expect(file.readings).toEqual(['2: 2026-01-05 08:00:00 102']);
  });

  it('takes formulas at their stored values', async () => {
    const file = await one({ 1: HEAD, 2: [formula('A1+1/3', String(DAY + AT_8)), formula('5*20', '100')] });
    expect(file.issues).toEqual([]);
    expect(file.readings).toEqual(['2: 2026-01-05 08:00:00 100']);
    const dated = await one({ 1: HEAD, 2: [stamp(DAY + AT_8), formula('B1&"x"', '100')] });
    expect(dated.readings).toEqual(['2: 2026-01-05 08:00:00 100']);
  });

  it('passes over merged titles above the names', async () => {
    const file = await one(
      {
        1: [text('Logbook of a trial person'), null, null],
        2: [text('Winter')],
        4: HEAD,
        5: [stamp(DAY + AT_8), number(102)],
      },
      { merged: 'A1:C1' },
    );
    expect(file.readings).toEqual(['5: 2026-01-05 08:00:00 102']);
  });

  it('keeps a reading at midnight, and joins a day and a time of day', async () => {
    const midnight = await one({ 1: HEAD, 2: [stamp(DAY), number(102)], 3: [stamp(DAY + 5 / 1440), number(103)] });
    expect(midnight.readings).toEqual(['2: 2026-01-05 00:00:00 102', '3: 2026-01-05 00:05:00 103']);
    for (const date1904 of [false, true]) {
      const from = date1904 ? DAY - 1462 : DAY;
      const two = await one(
        {
          1: [text('Date'), text('Clock time'), text('Glucose (mg/dL)')],
          2: [day(from), clock(0), number(102)],
          3: [day(from), clock(AT_8), number(103)],
        },
        { date1904 },
      );
      expect(two.readings).toEqual(['2: 2026-01-05 00:00:00 102', '3: 2026-01-05 08:00:00 103']);
    }
  });

  it('sets a cell of fault aside, and keeps words with commas, quotes and line breaks in one row', async () => {
    const file = await one({
      1: [...HEAD, text('Note')],
      2: [stamp(DAY + AT_8), fault('#N/A'), text('rice, "brown"\nand peas')],
      3: [stamp(DAY + AT_8 + 5 / 1440), number(104), null],
      4: [stamp(DAY + AT_8 + 10 / 1440), fault('#REF!'), null],
    });
    expect(file.notes).toEqual(['2: text rice, "brown" and peas']);
    expect(file.fates).toBe('inus');
    expect(file.readings).toHaveLength(1);
  });

  it('leaves out a sheet that holds no table and says so', async () => {
    const file = await read(
      workbookOf({
        Log: { 1: HEAD, 2: [stamp(DAY + AT_8), number(102)] },
        About: { 1: [text('Made by'), text('nobody')] },
      }),
    );
    expect(file[0]!.readings).toHaveLength(1);
    expect(file[1]!.issues.map((issue) => issue.split(' ').slice(0, 2).join(' '))).toContain(
      'warning sheet-without-table',
    );
  });

  it('opens a workbook inside an archive', async () => {
    const book = workbookOf({ Log: { 1: HEAD, 2: [stamp(DAY + AT_8), number(102)] } });
    const file = await read(
      zipSync({ 'a/log.xlsx': book, 'b.csv': strToU8('Time,Carbs (g)\n2026-01-05 08:00,45\n') }),
      'all.zip',
    );
    expect(file.map(({ file, readings, notes }) => [file, readings.length, notes.length])).toEqual([
      ['all.zip/a/log.xlsx/Log', 1, 0],
      ['all.zip/b.csv', 0, 1],
    ]);
  });

  test.each<[string, Uint8Array]>([
    ['one cell in the farthest corner', workbookOf({ Log: { 1048576: [text('x')] } })],
    [
      'a sheet far too wide',
      zipSync({
        '[Content_Types].xml': strToU8('<Types/>'),
        'xl/workbook.xml': strToU8('<workbook/>'),
        'xl/worksheets/sheet1.xml': strToU8('<c r="XFD1"/>'),
      }),
    ],
    ['parts missing', zipSync({ '[Content_Types].xml': strToU8('<Types/>'), 'xl/workbook.xml': strToU8('<workbook') })],
    ['of another kind', zipSync({ 'content.xml': strToU8('<office/>') })],
    ['a word list that lacks the word', workbookOf({ Log: { 1: [' t="s"><v>9</v>'] } })],
  ])('is told and not opened: %s', async (_, bytes) => {
    const [file] = await read(bytes);
    expect(file!.readings).toEqual([]);
    expect(file!.issues.length).toBeGreaterThan(0);
  });

  it('never throws whatever the bytes', async () => {
    const whole = workbookOf({ Log: { 1: HEAD, 2: [stamp(DAY + AT_8), number(102)] } });
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 4 }),
        async (changes) => {
          const broken = Uint8Array.from(whole);
          for (const [place, byte] of changes) broken[place] = byte;
          await read(broken);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('never throws whatever stands in a sheet', async () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 12 }).map((words) => text(words.replace(/[^\x20-\x7e]/g, '.'))),
      fc.double().map((value) => number(value)),
      fc.double().map((value) => stamp(value)),
      fc.constantFrom(fault('#VALUE!'), ' t="zz"><v>1</v>', '><v></v>', ' s="99"><v>1</v>', ' t="d"><v>2026-13-45</v>'),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 8 }), async (rows) => {
        await one(Object.fromEntries([[1, HEAD], ...rows.map((row, i) => [i + 2, row] as const)]));
      }),
      { numRuns: 100 },
    );
  });
});

import { readFileSync } from 'node:fs';
import { utils, write } from '@e965/xlsx';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it, test, vi } from 'vitest';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { readInputs } from '../../src/readers/index.ts';
import { chance } from '../../src/stats/chance.ts';
import { NO_OFFSET } from '../../src/time/offset.ts';
import { TODAY } from './digest.ts';

// Invented logbooks, written by other libraries: Debian's python3-xlwt 1.3 (MS-XLS) and python3-odf 1.4 (ISO/IEC 26300).
const data = (name: string) => new Uint8Array(readFileSync(new URL(`../data/sheets/${name}`, import.meta.url)));

async function read(bytes: Uint8Array, name: string) {
  const files = readInputs(await openWorkbooks([{ name, bytes }]), { today: TODAY });
  return files.map(({ name: file, kind, readings, notes, issues }) => ({
    file,
    kind,
    readings: Array.from({ length: readings.count }, (_, i) => {
      expect(readings.offset[i]).toBe(NO_OFFSET);
      return `${readings.line[i]}: ${new Date(readings.wall[i]!).toISOString().slice(0, 19)} ${readings.native[i]}`;
    }),
    notes: notes.map(
      ({ origin, wall, kind: of, amount, text }) =>
        `${origin.line}: ${new Date(wall).toISOString().slice(11, 16)} ${of} ${amount ?? text ?? ''}`,
    ),
    issues: issues.map(({ code, level }) => `${level} ${code}`),
  }));
}

describe.each([
  ['xlwt.xls', 'porridge "oats"'],
  ['odfpy.ods', 'porridge'],
])('%s', (name, remark) => {
  it('gives its sheets with dates, times of day, formulas’ values, merged titles, and the rows’ own numbers', async () => {
    const [log, meals] = await read(data(name), name);
    expect(log!.file).toBe(`${name}/Log`);
    expect(log!.kind).toBe('workbook');
    expect(log!.readings).toEqual(
      Array.from({ length: 12 }, (_, i) => `${i + 4}: 2026-01-14T08:${String(i * 5).padStart(2, '0')}:00 ${100.5 + i}`),
    );
    expect(log!.notes).toEqual([`6: 08:10 text ${remark}`]);
    expect(meals!.notes).toEqual(['2: 08:20 meal 45']);
    expect(log!.issues.every((issue) => issue.startsWith('note '))).toBe(true);
  });

  it('is found inside an archive', async () => {
    const packed = zipSync({ [`january/${name}`]: data(name) });
    expect((await read(packed, 'all.zip'))[0]!.readings).toHaveLength(12);
  });

  it('stays whole or becomes a word when it is damaged', { timeout: 60_000 }, async () => {
    // The library tells of records that it skips.
    const quiet = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const next = chance(7);
    for (let n = 0; n < 60; n++) {
      const bytes = data(name).slice(0, n % 3 === 0 ? Math.floor(next() * 5000) : undefined);
      for (let k = 0; k < 12; k++) bytes[Math.floor(next() * bytes.length)] = Math.floor(next() * 256);
      for (const { issues, readings, notes } of await read(bytes, name))
        expect(readings.length + notes.length + issues.length).toBeGreaterThan(0);
    }
    quiet.mockRestore();
  });
});

const open = (content: string, manifest = '<manifest/>') =>
  zipSync({
    mimetype: strToU8('application/vnd.oasis.opendocument.spreadsheet'),
    'content.xml': strToU8(
      `<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"><office:body><office:spreadsheet><table:table table:name="A">${content}</table:table></office:spreadsheet></office:body></office:document-content>`,
    ),
    'META-INF/manifest.xml': strToU8(manifest),
  });

describe('what cannot be read is said', () => {
  test.each<[string, Uint8Array, string]>([
    // ISO/IEC 26300-3, 4.8.4: encrypted files are listed with their encryption-data.
    [
      'an open sheet with a password',
      open('', '<manifest:file-entry><manifest:encryption-data/></manifest:file-entry>'),
      'warning workbook-locked',
    ],
    [
      'rows repeated without end',
      open(
        '<table:table-row table:number-rows-repeated="999999"><table:table-cell table:number-columns-repeated="999" office:value-type="float" office:value="5"><text:p>5</text:p></table:table-cell></table:table-row>',
      ),
      'warning workbook',
    ],
    [
      'entities',
      zipSync({
        mimetype: strToU8('application/vnd.oasis.opendocument.spreadsheet'),
        'content.xml': strToU8('<!DOCTYPE x [<!ENTITY a "b">]><x>&a;</x>'),
      }),
      'warning workbook',
    ],
  ])('%s', async (_, bytes, issue) => {
    expect((await read(bytes, 'log.ods'))[0]!.issues).toEqual([issue]);
  });

  it('a newer workbook with a password is a compound file that holds a package (MS-OFFCRYPTO, 2.3.4)', async () => {
    const { CFB } = await import('@e965/xlsx');
    const file = CFB.utils.cfb_new();
    CFB.utils.cfb_add(file, '/EncryptedPackage', new Uint8Array(4096));
    CFB.utils.cfb_add(file, '/EncryptionInfo', new Uint8Array(200));
    const bytes = new Uint8Array(CFB.write(file, { type: 'array' }) as Uint8Array);
    expect((await read(bytes, 'log.xlsx'))[0]!.issues).toEqual(['warning workbook-locked']);
  });

  it('another compound file is told as what it is', async () => {
    const { CFB } = await import('@e965/xlsx');
    const file = CFB.utils.cfb_new();
    CFB.utils.cfb_add(file, '/WordDocument', new Uint8Array(4096));
    const bytes = new Uint8Array(CFB.write(file, { type: 'array' }) as Uint8Array);
    expect((await read(bytes, 'letter.doc'))[0]!.issues).toEqual(['warning not-text']);
  });
});

// Day numbers 1.7 and 4 shown as dates: 1 January 1900 in programs that take 1900 for a leap year, 31 December 1899 in others (ISO/IEC
// 29500-1, 18.17.4.1, from memory).
it('doses in an old workbook whose cells show dates are the numbers that were typed', async () => {
  const sheet = utils.aoa_to_sheet([
    ['Time', 'Glucose (mg/dL)', 'Insulin (IU)'],
    ...Array.from({ length: 30 }, (_, i) => [
      `2026-01-14 ${String(8 + Math.floor(i / 12)).padStart(2, '0')}:${String((i % 12) * 5).padStart(2, '0')}`,
      100 + i,
    ]),
  ]);
  [1.7, 4, 59.5].forEach((v, i) => {
    sheet[`C${4 + i}`] = { t: 'n', v, z: 'yyyy-mm-dd hh:mm' };
  });
  sheet.C9 = { t: 'n', v: 7 };
  sheet['!ref'] = 'A1:C31';
  const bytes: ArrayBuffer = write({ SheetNames: ['a'], Sheets: { a: sheet } }, { type: 'array', bookType: 'xls' });
  const [log] = await read(new Uint8Array(bytes), 'log.xls');
  expect(log!.notes.map((note) => note.split(' ').slice(2).join(' '))).toEqual([
    'insulin 1.7',
    'insulin 4',
    'insulin 59.5',
    'insulin 7',
  ]);
});

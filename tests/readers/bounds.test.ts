import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { LIMITS, LONGEST_LINE, longLine, MOST_LINES, tooLong } from '../../src/readers/bounds.ts';
import { openWorkbooks, tooWide } from '../../src/readers/containers/workbook.ts';
import { readInputs } from '../../src/readers/index.ts';

/** A piece over and over, by doubling what is there. */
function repeated(text: string, length: number): Uint8Array {
  const piece = new TextEncoder().encode(text);
  const bytes = new Uint8Array(length);
  bytes.set(piece.subarray(0, length));
  for (let n = piece.length; n < length; n *= 2) bytes.copyWithin(n, 0, Math.min(n, length - n));
  return bytes;
}
function joined(...parts: (string | Uint8Array)[]): Uint8Array {
  const all = parts.map((part) => (typeof part === 'string' ? new TextEncoder().encode(part) : part));
  const bytes = new Uint8Array(all.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of all) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
const TABLE = 'Time,Glucose (mg/dL)\n2026-01-14 08:00,100\n2026-01-14 08:05,101\n';
/** One more than the most lines, of one byte each: what took 4.6 GB to read was no longer by much. */
const MANY = MOST_LINES + 10;
const LONG = LONGEST_LINE + 10;

/** Nothing of it was kept: memory grew by less than the text itself would take. */
function expectRefused(name: string, bytes: Uint8Array, code: 'too-many-lines' | 'line-too-long'): void {
  const before = process.memoryUsage().rss;
  const [file] = readInputs([{ name, bytes }], { today: '2026-07-01' });
  expect(file!.issues.map((issue) => issue.code)).toEqual([code]);
  expect(file!.readings.count).toBe(0);
  expect(process.memoryUsage().rss - before).toBeLessThan(60_000_000);
}

describe('a file that would fill memory is refused with a word, before anything is kept of it', () => {
  it.each([
    ['blank lines', 'a.csv', joined(TABLE, repeated('\n', MANY))],
    ['blank lines of a typewriter', 'a.csv', joined(TABLE, repeated('\r', MANY))],
    ['lists in each other', 'a.json', repeated('[', 4_000_100)],
    ['objects in each other', 'a.json', repeated('{"a":', 4_000_100)],
    ['names in one record', 'a.json', joined('[{"a":1', repeated(',"b":1', 18_100_000), '}]')],
  ])('%s', (_, name, bytes) => expectRefused(name, bytes, 'too-many-lines'));

  it.each([
    ['quotes', joined(TABLE, repeated('"', LONG))],
    ['pairs of quotes', joined(TABLE, repeated('"a"b,', LONG))],
    ['quotes and no table', repeated('"', LONG)],
    ['digits', joined(TABLE, repeated('1', LONG))],
    ['words', repeated('abc ', LONG)],
    ['letters of no encoding', joined(TABLE, new Uint8Array(LONG).fill(0xe9))],
    ['letters of two bytes', repeated('"\0', 2 * LONG)],
    ['columns of names', joined('Time,Glucose (mg/dL)', repeated(',abc', LONG), '\n2026-01-14 08:00,100\n')],
    [
      'columns of times',
      joined('glucose mg/dL', repeated(',08:00', LONG), '\n2026-01-14', repeated(',100', LONG), '\n'),
    ],
    ['name=value', joined('2026-03-17 06:10 ', repeated('a=1 ', LONG))],
    ['what begins like JSON and is none', joined('{x', repeated('"', LONG))],
  ])('one line of %s', (_, bytes) => expectRefused('a.csv', bytes, 'line-too-long'));
});

/** A hundredth of everything, so that a run stays short; the limits themselves are numbers. */
const SMALLER = Object.fromEntries(
  Object.entries(LIMITS).map(([name, most]) => [name, name === 'deep' ? most : most / 100]),
) as unknown as typeof LIMITS;

describe('what is counted, by limits a hundredth as large', () => {
  it.each([
    ['rows of nothing', repeated(',\n', 250_000)],
    ['cells of nothing', repeated(`${','.repeat(90)}\n`, 620_000)],
    ['empty records, one a line', repeated('{}\n', 370_000)],
    ['empty records in a list', joined('[', repeated('{},', 1_090_000))],
    ['numbers in a list', joined('{"glucose":[', repeated('1,', 730_000))],
    ['objects in objects', joined('[{"a":', repeated('[{}],', 2_100_000))],
    [
      'names in one entry of a bundle',
      joined('{"resourceType":"Bundle","entry":[{"a":1', repeated(',"":1', 151_000), '}]}'),
    ],
  ])('%s are too many', (_, bytes) => expect(tooLong(bytes, SMALLER)).toBe(true));

  const row = '2026-01-14 08:00,100\n';
  const record = '{"time":"2026-01-14 08:00","glucose":100,"unit":"mg/dL","device":{"id":7}},';
  const series = repeated('100,', 52_600 * 4);
  it.each([
    ['rows every minute', repeated(row, row.length * 52_600)],
    ['records in a list', joined('[', repeated(record, record.length * 52_600), '{}]')],
    ['records, one a line', repeated(record.replace(/,$/, '\n'), record.length * 52_600)],
    ['records of a bundle', joined('{"entry":[', repeated(record, record.length * 52_600), '{}]}')],
    ['series beside each other', joined('{"time":[', series, '1],"glucose":[', series, '1]}')],
    ['signs in a text', joined('[{"note":"', repeated('[{,\\"', 600_000), '"}]')],
  ])('ten years of %s are not', (_, bytes) => expect(tooLong(bytes, SMALLER)).toBe(false));

  it('line ends of two letters are one, and lines of any end are short', () => {
    expect(tooLong(repeated('\r\n', 240_000), SMALLER)).toBe(false);
    expect(tooLong(repeated('\n', 120_001), SMALLER)).toBe(true);
    expect(longLine(repeated(row, row.length * 50_000))).toBe(0);
    expect(longLine(repeated(row.replace('\n', '\r'), row.length * 50_000))).toBe(0);
  });
});

describe('what unpacks to such a file is refused with the same word', () => {
  const inside = joined(TABLE, repeated('\n', MANY));
  it.each([
    ['gzip', 'a.csv.gz', () => gzipSync(inside, { level: 1 })],
    ['an archive', 'a.zip', () => zipSync({ 'a.csv': inside }, { level: 1 })],
  ])('%s', (_, name, packed) => expectRefused(name, packed(), 'too-many-lines'));
  it('an archive of one line', () =>
    expectRefused('a.zip', zipSync({ 'a.csv': joined(TABLE, repeated('"', LONG)) }, { level: 1 }), 'line-too-long'));

  it.each([
    [
      'a text without an end',
      joined('<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>', repeated('x', LONG)),
    ],
    ['tags in each other', repeated('<a>', LONG)],
    [
      'a cell far out',
      joined('<worksheet><sheetData><row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData></worksheet>'),
    ],
  ])('a workbook whose sheet is %s is told as one that cannot be opened', async (_, sheet) => {
    const bytes = zipSync(
      {
        '[Content_Types].xml': joined('<Types/>'),
        'xl/workbook.xml': joined('<workbook/>'),
        'xl/worksheets/sheet1.xml': sheet,
      },
      { level: 1 },
    );
    const [opened] = await openWorkbooks([{ name: 'a.xlsx', bytes }]);
    const [file] = readInputs([opened!], { today: '2026-07-01' });
    expect([file!.readings.count, file!.issues.map(({ code }) => code)]).toEqual([0, ['workbook']]);
  });
});

it('the cells of all sheets of a workbook are counted together', () => {
  const sheet = (n: number) => ({
    name: `xl/worksheets/sheet${n}.xml`,
    bytes: joined('<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row>'),
  });
  expect(tooWide([sheet(1), sheet(2)], 4)).toBe(false);
  expect(tooWide([sheet(1), sheet(2), sheet(3)], 4)).toBe(true);
});

describe('lines as long as they may be', () => {
  const most = (text: string): Uint8Array => repeated(text, LONGEST_LINE - 100);
  // What is done for each column may not look at all the others: thousands of columns took minutes so.
  it.each([
    ['hours', joined('glucose mg/dL', most(',08:00'), '\n2026-01-14', most(',100'), '\n')],
    ['days', joined('glucose mg/dL', most(',14.01.2026'), '\n08:00', most(',100'), '\n')],
    ['names', joined('Time,Glucose (mg/dL)', most(',abc'), '\n2026-01-14 08:00,100\n')],
    ['parts of food', joined('Time,Food', most(',Protein (g)'), '\n2026-01-14 08:00,x', most(',12'), '\n')],
    ['names of glucose', joined('Time', most(',Glucose'), '\n2026-01-14 08:00', most(',112'), '\n')],
    ['a key and a value', joined('Patient:', most(' x'), '\nTime,Glucose (mg/dL)\n2026-01-14 08:00,100\n')],
    ['a remark', joined('Time,Glucose (mg/dL),Note\n2026-01-14 08:00,100,"', most('x'), '"\n')],
  ])('%s take no minutes, and no more is told than somebody reads', { timeout: 30_000 }, (_, bytes) => {
    const before = process.memoryUsage().rss;
    const [file] = readInputs([{ name: 'a.csv', bytes }], { today: '2026-07-01' });
    expect(JSON.stringify(file!.issues).length).toBeLessThan(20_000);
    expect(process.memoryUsage().rss - before).toBeLessThan(900_000_000);
  });
});

describe('rows of words', () => {
  // Each row may be a header: what its words mean is looked up once, and a header over and over is one.
  it.each([
    ['a header over and over', 'Time,Glucose (mg/dL)\n'],
    ['all marks that part columns', 'a;b,c|d\te\n'],
  ])('%s takes no minutes', { timeout: 30_000 }, (_, text) => {
    const [file] = readInputs([{ name: 'a.csv', bytes: repeated(text, 2_000_000) }], { today: '2026-07-01' });
    expect(file!.readings.count).toBe(0);
  });
});

import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvText } from '../../src/writers/csv.ts';

test.each<[string, (string | number)[], string]>([
  ['plain cells', ['a', 1.5, ''], 'a,1.5,\r\n'],
  // RFC 4180, section 2, rules 5 to 7.
  ['a comma', ['a,b'], '"a,b"\r\n'],
  ['a quote', ['a"b'], '"a""b"\r\n'],
  ['a line end', ['a\r\nb'], '"a\r\nb"\r\n'],
  ['a negative number', [-1.5, '-2'], '-1.5,-2\r\n'],
])('writes %s', (_, row, text) => {
  expect(csvText([row])).toBe(text);
});

test.each(['=1+1', '+1', '-1+cmd', '@SUM(A1)', '\t1', '\r1', '\n1', '\uff1d1', '=HYPERLINK("http://x")'])(
  'a cell that begins like a formula is kept from running: %j',
  (text) => {
    const [[cell]] = parse(csvText([[text]]), { record_delimiter: '\r\n' }) as [[string]];
    expect(cell).toBe(`'${text}`);
  },
);

test.each([
  ['14.01.2026;=1+1', "14.01.2026;'=1+1"],
  ['a;"@SUM(A1)";b', 'a;"\'@SUM(A1)";b'],
  ['a\t-1+cmd', "a\t'-1+cmd"],
  ['a;-5,6;b;+3', 'a;-5,6;b;+3'],
  ['a-b = c; d', 'a-b = c; d'],
  // Behind a comma its quotes open nothing for whoever cuts at a semicolon, and the line end begins a row.
  ['"\r\n=1+1"', '"\r\n\'=1+1"'],
  ['a\n"=1+1"', 'a\n"\'=1+1"'],
  ['\r=1', "'\r'=1"],
  ['\n=1', "'\n'=1"],
  ['a\n-5\nb', 'a\n-5\nb'],
])('a cell that would be cut at another delimiter has no formula behind the cut: %j', (text, kept) => {
  expect(parse(csvText([[text]]), { record_delimiter: '\r\n' })).toEqual([[kept]]);
});

test('controls and signs of direction are told by number', () => {
  expect(csvText([['P\u001b[2J\u202e17\u0000', 'a\tb\nc', 'José é 日本']])).toBe(
    'P\\u001b[2J\\u202e17\\u0000,"a\tb\nc",José é 日本\r\n',
  );
});

test('an independent reader gets every other cell back', () => {
  const cell = fc
    .string({ unit: fc.constantFrom(...'ab1,;"\'\r\n \u00e9=') })
    .filter((text) => !/^[=+\-@\t\r\n]|[;\r\n]"?=/.test(text));
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1 }), (rows) => {
      expect(parse(csvText(rows), { record_delimiter: '\r\n', relax_column_count: true })).toEqual(rows);
    }),
  );
});

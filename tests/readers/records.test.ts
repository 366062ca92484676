import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { cellText, fieldCount, scanRecords } from '../../src/readers/table/records.ts';

const COMMA = 0x2c;

function split(text: string, delimiter = COMMA): string[][] {
  const records = scanRecords(new TextEncoder().encode(text), delimiter);
  const out: string[][] = [];
  for (let r = 0; r < records.count; r++) {
    const row: string[] = [];
    for (let c = 0; c < fieldCount(records, r); c++) row.push(cellText(records, r, c));
    out.push(row);
  }
  return out;
}

describe('RFC 4180 grammar', () => {
  // Rules 1 to 7 of section 2 of RFC 4180, then the line ends of the wild (common practice, no source).
  test.each<[string, string, string[][]]>([
    [
      '1 records on lines',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2 last line without end',
      'aaa,bbb\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    ['4 spaces belong to fields and are trimmed for us', ' a , b ', [['a', 'b']]],
    [
      '5 quoted fields',
      '"aaa","bbb"\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      '6 line break in quotes',
      '"aaa","b\r\nbb"\r\nz,y',
      [
        ['aaa', 'b\r\nbb'],
        ['z', 'y'],
      ],
    ],
    ['6 delimiter in quotes', '"a,b",c', [['a,b', 'c']]],
    ['7 doubled quotes', '"aaa","b""bb"', [['aaa', 'b"bb']]],
    ['empty fields', ',,\n', [['', '', '']]],
    [
      'LF',
      'a,b\nc,d\n',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    [
      'lone CR',
      'a,b\rc,d\r',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    ['mixed line ends', 'a\r\nb\rc\nd', [['a'], ['b'], ['c'], ['d']]],
    ['blank line', 'a\n\nb', [['a'], [''], ['b']]],
    [
      'stray quote kept',
      'a,b"c\nd,e',
      [
        ['a', 'b"c'],
        ['d', 'e'],
      ],
    ],
    [
      'quote closed in mid-field kept',
      '"a"b,c\nd,e',
      [
        ['a"b', 'c'],
        ['d', 'e'],
      ],
    ],
    [
      'unclosed quote ends with its line',
      'a,"b\nc,d\ne,f\n',
      [
        ['a', 'b'],
        ['c', 'd'],
        ['e', 'f'],
      ],
    ],
    [
      'unclosed quote before another quoted field',
      'a,"b\nc,"d"\n',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
  ])('%s', (_, text, expected) => {
    expect(split(text)).toEqual(expected);
  });

  it('counts physical lines over quoted line breaks', () => {
    const records = scanRecords(new TextEncoder().encode('a,b\n"x\ny",c\r\nd,e\rf,g'), COMMA);
    expect([...records.line.subarray(0, records.count)]).toEqual([1, 2, 4, 5]);
  });
});

describe('the same records as csv-parse on well-formed text', () => {
  const cell = fc.string({
    unit: fc.constantFrom('a', 'ä', '1', '.', ',', ';', '"', '\n', ' ', '\t', '|', '猫'),
    maxLength: 6,
  });
  const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 8 });
  it('for any cells, delimiter and line end', () => {
    fc.assert(
      fc.property(
        table,
        fc.constantFrom(',', ';', '\t', '|'),
        fc.constantFrom('\n', '\r\n'),
        (cells, delimiter, end) => {
          const text =
            cells.map((row) => row.map((c) => `"${c.replaceAll('"', '""')}"`).join(delimiter)).join(end) + end;
          const oracle: string[][] = parse(text, { delimiter, relax_column_count: true, record_delimiter: end });
          const trimmed = oracle.map((row) => row.map((c) => c.trim()));
          expect(split(text, delimiter.charCodeAt(0))).toEqual(trimmed);
        },
      ),
      { numRuns: 300 },
    );
  });
});

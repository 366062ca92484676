import { strToU8, unzipSync, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { isPlainXml } from '../../src/readers/containers/workbookXml.ts';
import { readInputs } from '../../src/readers/index.ts';
import { number, stamp, text, workbookOf } from '../support/workbook.ts';

// XML 1.0 (fifth edition), 2.4 to 3.1, in so far as it is looked at here.
test.each<[xml: string, plain: boolean]>([
  ['', true],
  ['<?xml version="1.0" encoding=\'UTF-8\'?><a x = "1" y=\'"\' z="a>b">t > x</a>', true],
  ['<a/><!-- < " --><b><![CDATA[ < " ]]></b>', true],
  ['<a', false],
  ['<a x="', false],
  ['<a x=1>', false],
  ['<a x=>', false],
  ['<a x="<b>"/>', false],
  ['<a <b>', false],
  ['<a "x">', false],
  ['<!-- ', false],
  ['<!DOCTYPE a [<!ENTITY b "c">]><a/>', false],
])('%s', (xml, plain) => {
  expect(isPlainXml(strToU8(xml))).toBe(plain);
});

const whole = unzipSync(
  workbookOf({ S: { 1: [text('Time'), text('Sensor glucose (mg/dL)')], 2: [stamp(46086.5), number(110)] } }),
);
const SHEET = 'xl/worksheets/sheet1.xml';
const sheet = new TextDecoder().decode(whole[SHEET]);
const n = 1_000_000;

// Each of these kept the library for minutes, or would fill the memory.
test.each([
  ['a long value', `<row r="2" x="${'a'.repeat(n)}">`],
  ['a long value with marks of tags', `<row r="2" x="${'<a> '.repeat(n)}">`],
  ['many attributes', `<row r="2" ${Array.from({ length: n / 10 }, (_, i) => `a${i}="1"`).join(' ')}>`],
  ['a long section', `<![CDATA[${']] '.repeat(n)}]]><row r="2">`],
  ['a long text', `${'a'.repeat(n)}<row r="2">`],
  ['nested tags', `${'<a>'.repeat(n)}<row r="2">`],
])('%s keeps a workbook closed', async (_, piece) => {
  const bytes = zipSync({ ...whole, [SHEET]: strToU8(sheet.replace('<row r="2">', piece)) });
  const files = readInputs(await openWorkbooks([{ name: 'a.xlsx', bytes }]), { today: '2026-07-01' });
  expect(files.flatMap(({ issues }) => issues.map(({ code }) => code))).toEqual(['workbook']);
});

test('entities that multiply are refused', async () => {
  const entities = [...'bcdefghij'].map((name, i) => `<!ENTITY ${name} "${`&${'abcdefghi'[i]};`.repeat(10)}">`);
  const bomb = `<!DOCTYPE x [<!ENTITY a "${'a'.repeat(99)}">${entities.join('')}]>${sheet.replace('Time', '&j;')}`;
  const bytes = zipSync({ ...whole, [SHEET]: strToU8(bomb) });
  const [file] = readInputs(await openWorkbooks([{ name: 'a.xlsx', bytes }]), { today: '2026-07-01' });
  expect(file!.issues.map(({ code }) => code)).toEqual(['workbook']);
});

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { formsText } from '../../src/build/forms.ts';
import { localeForms, type Style } from '../../src/language/locale.ts';
import { REGIONS } from '../../src/language/place.ts';
import type { LocalDate } from '../../src/model/glucose.ts';

/** Unicode CLDR 48, as its charts print the forms of each locale (from memory). */
describe.each([
  ['en-US', '1,234.5', 'Tue, June 4', 'Jun 4', '9 AM', '3:05 PM', 'a, b, and c'],
  ['en-GB', '1,234.5', 'Tue 4 June', '4 Jun', '09:00', '15:05', 'a, b and c'],
  ['en-IN', '1,234.5', 'Tue, 4 June', '4 Jun', '9 am', '3:05 pm', 'a, b and c'],
  ['es-ES', '1234,5', 'mar, 4 de junio', '4 jun', '09:00', '15:05', 'a, b y c'],
  ['es-MX', '1,234.5', 'mar, 4 de junio', '4 jun', '9 a.m.', '3:05 p.m.', 'a, b y c'],
  ['es-AR', '1.234,5', 'mar, 4 de junio', '4 jun', '9 a. m.', '3:05 p. m.', 'a, b y c'],
])('%s', (locale, number, short, compact, hour, minute, list) => {
  const forms = localeForms(locale);
  const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
  const date = (style: Style): string => plain(forms.date('2024-06-04' as LocalDate, style));

  test('numbers, days, hours, lists', () => {
    expect(forms.number(1234.5, 1)).toBe(number);
    expect([date('short'), date('compact')]).toEqual([short, compact]);
    expect([plain(forms.clock(540)), plain(forms.clock(905))]).toEqual([hour, minute]);
    expect(forms.list(['a', 'b', 'c'])).toBe(list);
  });
});

test('thousands from four digits or five, and by lakh', () => {
  expect(localeForms('es-ES').number(9999)).toBe('9999');
  expect(localeForms('es-ES').number(12_345)).toBe('12.345');
  expect(localeForms('en-IN').number(1_234_567)).toBe('12,34,567');
});

test('half is rounded away from zero as the number is written', () => {
  const { number } = localeForms('en-US');
  expect([number(1.005, 2), number(7.05, 1), number(-0.25, 1), number(2.5), number(1e-7, 1)]).toEqual([
    '1.01',
    '7.1',
    '\u22120.3',
    '3',
    '0.0',
  ]);
  expect(number(-0.04, 1)).toBe('0.0');
  expect(number(2.5, 0, 3)).toBe('2.5');
});

test('Spanish says "e" before a spoken i (Real Academia Española, Diccionario panhispánico de dudas, "y")', () => {
  const { list } = localeForms('es-MX');
  expect([list(['fibra', 'insulina']), list(['agua', 'hielo']), list(['sal', 'higos']), list(['sal'])]).toEqual([
    'fibra e insulina',
    'agua y hielo',
    'sal e higos',
    'sal',
  ]);
});

test('every region has its forms', () => {
  for (const region of REGIONS) expect(() => localeForms(region)).not.toThrow();
});

test('the table is what Unicode says, where the engine carries the version it was made from', () => {
  const kept = readFileSync(new URL('../../src/language/forms.json', import.meta.url), 'utf8');
  expect(JSON.parse(kept).cldr === process.versions.cldr ? formsText() : kept).toBe(kept);
});

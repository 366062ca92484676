import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { ReadSettings } from '../../src/model/input.ts';
import { readInputs } from '../../src/readers/index.ts';
import { scanRecords } from '../../src/readers/table/records.ts';
import { rows, TODAY, tell } from './digest.ts';
import { sound } from './sound.ts';

const settings: fc.Arbitrary<ReadSettings> = fc.record(
  {
    unit: fc.constantFrom('mg/dL' as const, 'mmol/L' as const),
    dateOrder: fc.constantFrom('day-first' as const, 'month-first' as const, 'year-first' as const),
    zone: fc.constant('Europe/Helsinki'),
    layout: fc.constantFrom({}, { columns: { '#1': 'time', '#2': 'sensor' } }, { columns: { When: 'time' } }, 3),
    today: fc.constant(TODAY),
  },
  { requiredKeys: ['today'] },
);

const word = fc.constantFrom(
  'Time',
  'Date',
  'Glucose (mg/dL)',
  'Glucose',
  'Carbs (g)',
  'Insulin',
  'Note',
  'Unit',
  'Kind',
  'Exercise',
  'Duration',
  'constructor',
  '5 constructor',
  'Carbs (__proto__)',
  'sensor',
  '5,6',
  '5.6',
  '102',
  '>400',
  'LOW',
  '2026-01-14 08:00',
  '14/01/2026',
  '01/14/2026',
  '08:05',
  '8:05 PM',
  '1768377600',
  '',
  '"',
  '\u0000',
  'mmol/L',
  '99999999999999999999',
);
const mess = fc
  .array(fc.tuple(word, fc.constantFrom(',', ';', '\t', '|', '\n', '\r\n', '"', ' ')), { maxLength: 60 })
  .map((parts) => parts.flat().join(''));

describe('nothing makes a reader throw or lose a row', () => {
  it('any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), settings, (bytes, s) => {
        for (const file of readInputs([{ name: 'x', bytes }], s)) sound(file);
      }),
      { numRuns: 300 },
    );
  });

  it('any mixture of the words readers look for', () => {
    fc.assert(
      fc.property(mess, settings, (text, s) => {
        const bytes = new TextEncoder().encode(text);
        for (const file of readInputs([{ name: 'x', bytes }], s)) sound(file);
      }),
      { numRuns: 1000 },
    );
  });

  it('rows = used + duplicate + set aside + notes + ignored, one fate for each record', () => {
    fc.assert(
      fc.property(fc.array(fc.array(word, { minLength: 3, maxLength: 3 }), { maxLength: 30 }), (table) => {
        const text = `Time,Glucose (mg/dL),Note\n${table.map((row) => row.map((c) => `"${c.replaceAll('"', '""')}"`).join(',')).join('\n')}`;
        const digest = tell(text);
        const records = scanRecords(new TextEncoder().encode(text), 0x2c);
        if (digest.choices.delimiter === 'file: ,') expect(digest.file.fates.length).toBe(records.count);
        sound(digest.file);
      }),
      { numRuns: 300 },
    );
  });

  test.each<[string, string]>([
    ['a line of a million characters', `Time,Glucose (mg/dL)\n${'x'.repeat(1_000_000)}\n2026-01-14 08:00,102\n`],
    ['a hundred thousand columns', `Time,Glucose (mg/dL)\n${','.repeat(100_000)}\n2026-01-14 08:00,102\n`],
    ['a million quotes', `Time,Glucose (mg/dL)\n${'"'.repeat(1_000_001)}\n2026-01-14 08:00,102\n`],
    ['quotes opened on every line', `Time,Glucose (mg/dL)\n2026-01-14 08:00,102\n${'"x\n'.repeat(50_000)}`],
    ['doubled quotes on every line', `Time,Glucose (mg/dL)\n2026-01-14 08:00,102\n${'"""\n'.repeat(50_000)}`],
  ])('%s', (_, text) => {
    const digest = tell(text);
    sound(digest.file);
    expect(digest.readings.at(-1)).toBe('2026-01-14 08:00 102 mg/dL');
  });

  it('tells a file of nothing but faults in a few issues', () => {
    const digest = tell(`Time,Glucose (mg/dL)\n${rows(500, (_, t) => `${t.slice(0, 16)},zz`)}`);
    const faults = digest.file.issues.filter((issue) => issue.code === 'value-not-a-number');
    expect(faults.length).toBe(21);
    expect(faults.at(-1)).toMatchObject({ count: 480 });
  });
});

/** Bytes of a generator that any number begins (Park and Miller 1988), with nothing at their start that tells a kind. */
function noise(seed: number, length: number): Uint8Array {
  let state = seed;
  return Uint8Array.from({ length }, (_, i) => {
    state = (state * 48_271) % 2_147_483_647;
    return i === 0 ? 0x44 : state >> 8;
  });
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  'bytes without any meaning are called that, and nothing of them is shown: %i',
  (seed) => {
    for (const length of [2_000, 20_000, 200_000]) {
      const [file] = readInputs([{ name: 'a.csv', bytes: noise(seed, length) }], { today: TODAY });
      expect(file!.issues.map(({ code, actual }) => [code, actual])).toEqual([['not-text', { is: 'binary-data' }]]);
    }
  },
);

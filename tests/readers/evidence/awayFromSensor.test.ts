import { describe, expect, test } from 'vitest';
import { numbers, read, refusals, sugar, table } from './tables.ts';

const N = 400;
const ALL = Array.from({ length: N }, (_, i) => sugar(i));
const among = (name: string, cell: (i: number) => number | string, every = 45): string =>
  table(`Time,${name},Sensor (mg/dL)`, N, (i) => `${i % every === 7 ? cell(i) : ''},${sugar(i)}`);

describe('a column called glucose whose values lie nowhere near the sensor’s', () => {
  test.each<[string, (i: number) => number]>([
    ['Glucose gel', () => 15],
    ['Glucose drops', () => 20],
    ['Traubenzucker', () => 12],
    ['Sugar', (i) => 20 + (i % 9)],
    ['BG W9', (i) => sugar(i) * 3],
  ])('%s is asked about, and either answer is taken', (name, cell) => {
    const text = among(name, cell);
    expect(refusals(read(text))).toEqual(['column-unknown']);
    for (const [role, notes] of [
      ['ignore', 0],
      ['fingerstick', 9],
    ] as const) {
      const file = read(text, { layout: { meanings: { [name]: role } } });
      expect([refusals(file), numbers(file), file.notes.length]).toEqual([[], ALL, notes]);
    }
  });

  test.each<[string, (i: number) => number | string]>([
    ['near it', (i) => sugar(i) + (i % 2 ? 14 : -17)],
    ['a quarter off', (i) => Math.round(sugar(i) * 1.25)],
    ['one far off', (i) => (i < 60 ? 320 : sugar(i))],
    ['in mmol/L', (i) => (sugar(i) / 18).toFixed(1)],
  ])('fingersticks are read: %s', (_, cell) => {
    const name = /mmol/.test(_) ? 'Glucose (mmol/L)' : 'Glucose';
    const file = read(among(name, cell));
    expect([refusals(file), numbers(file)]).toEqual([[], ALL]);
    expect(new Set(file.notes.map(({ kind }) => kind))).toEqual(new Set(['fingerstick']));
  });
});

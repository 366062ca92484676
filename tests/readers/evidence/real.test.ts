import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { numbers, read, refusals, times } from './tables.ts';

const file = (path: string) => read(readFileSync(`tests/data/${path}`, 'utf8'), {}, path);
const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Counts, means, ends worked out apart with Python's csv module from the same excerpts (READMEs beside them). */
describe('real recordings are read whole', () => {
  test.each<[string, number, number, string, string]>([
    ['bigideas/001.csv', 600, 97.025, '2020-02-13 17:23', '2020-02-15 19:23'],
    ['hupa_ucm/HUPA0011P.csv', 600, 151.3216666666667, '2018-11-07 15:55', '2018-11-09 17:50'],
  ])('%s', (path, count, average, first, last) => {
    const got = file(path);
    expect([refusals(got), got.readings.count]).toEqual([[], count]);
    expect(mean(numbers(got))).toBeCloseTo(average, 9);
    expect([times(got)[0], times(got).at(-1)]).toEqual([first, last]);
  });
  it('sugar in food is no finger stick and no reading', () => {
    const got = file('bigideas/Food_Log_001.csv');
    expect(numbers(got)).toEqual([]);
    expect([...new Set(got.notes.map(({ kind }) => kind))]).toEqual(['meal']);
    expect(got.notes).toHaveLength(61);
    expect(got.notes.reduce((sum, { amount = 0 }) => sum + amount, 0)).toBeCloseTo(1702.9, 6);
    expect(got.columns?.find(({ name }) => name === 'sugar')).toMatchObject({ role: 'nutrient', why: 'name' });
  });
  it('every column of every file is explained', () => {
    for (const path of [
      'bigideas/001.csv',
      'bigideas/Food_Log_001.csv',
      't1d_uom/glucose-2320.csv',
      't1d_uom/nutrition-2314.csv',
    ]) {
      const names = readFileSync(`tests/data/${path}`, 'utf8').replace('\ufeff', '').split(/\r?\n/)[0]!.split(',');
      expect(file(path).columns?.map(({ name }) => name)).toEqual(names);
    }
  });
});

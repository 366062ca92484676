import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Goal, Limits, TargetSet } from '../../src/model/targets.ts';
import { BANDS, bandBeyond, bandOf } from '../../src/targets/bands.ts';
import { targetSets } from '../../src/targets/index.ts';
import { PRINTED_ABOVE_RANGE, PRINTED_PAIRS } from '../support/printedPairs.ts';

const SETS = Object.values(targetSets);
const BATTELINO = 'Battelino 2019, Diabetes Care 42:1593-1603, doi 10.2337/dci19-0028';

/** Goals as printed; low and high are cumulative (Battelino 2019; adults also in Holt 2021, PMC8481000, table 1). */
const PRINTED: [TargetSet['id'], string[]][] = [
  ['adult', ['very-low < 1', 'low < 4', 'in-range > 70', 'high < 25', 'very-high < 5']],
  ['older', ['low < 1', 'in-range > 50', 'very-high < 10']],
  ['pregnancy-type-1', ['very-low < 1', 'low < 4', 'in-range > 70', 'high < 25']],
  ['pregnancy-other', []],
];

/** Values and their bands: Battelino 2019 with the real-valued edges of Holt 2021 (PMC8481000, table 1). */
const FIXTURES: [TargetSet['id'], keyof TargetSet['limits'], Record<string, number[]>][] = [
  [
    'adult',
    'mg/dL',
    {
      'very-low': [39, 53, 53.9],
      low: [54, 69, 69.9],
      'in-range': [70, 140, 180],
      high: [180.1, 181, 250],
      'very-high': [250.1, 251, 400],
    },
  ],
  [
    'adult',
    'mmol/L',
    { 'very-low': [2.9], low: [3.0, 3.8], 'in-range': [3.9, 10.0], high: [10.1, 13.9], 'very-high': [14.0] },
  ],
  ['pregnancy-type-1', 'mg/dL', { 'very-low': [53], low: [54, 62], 'in-range': [63, 140], high: [141, 251] }],
  ['pregnancy-type-1', 'mmol/L', { 'very-low': [2.9], low: [3.0, 3.4], 'in-range': [3.5, 7.8], high: [7.9, 14.0] }],
];

const spoken = ({ of, op, share }: Goal) => `${of} ${op} ${share * 100}`;
const edges = ({ veryLow, low, high, veryHigh }: Limits) => [
  veryLow,
  low,
  high,
  ...(veryHigh === null ? [] : [veryHigh]),
];

describe('target sets', () => {
  test.each(PRINTED)('%s asks what its source prints', (id, goals) => {
    expect(targetSets[id].goals.map(spoken)).toEqual(goals);
    expect(targetSets[id].source).toContain(BATTELINO);
  });

  test('CV at most 36 % for adults; GMI and CV limit not in pregnancy', () => {
    expect(SETS.map(({ cvLimit, gmi }) => [cvLimit, gmi])).toEqual([
      [36, true],
      [36, true],
      [null, false],
      [null, false],
    ]);
  });

  test.each(SETS)('$id is filed under its own id, limits rise and pair as published', (set) => {
    expect(targetSets[set.id]).toBe(set);
    const mgdl = edges(set.limits['mg/dL']);
    expect(mgdl).toEqual(mgdl.toSorted((a, b) => a - b));
    const printed = new Map<number, number>([...PRINTED_PAIRS, PRINTED_ABOVE_RANGE]);
    expect(mgdl.map((limit) => printed.get(limit))).toEqual(edges(set.limits['mmol/L']));
  });
});

describe('bands', () => {
  test.each(FIXTURES)('%s in %s', (id, unit, bands) => {
    for (const [band, values] of Object.entries(bands)) {
      for (const value of values)
        expect([value, BANDS[bandOf(value, targetSets[id].limits[unit])]]).toEqual([value, band]);
    }
  });

  test('meet without gap or overlap: one band a value, rising with it, each edge on its printed side', () => {
    for (const set of SETS) {
      for (const limits of Object.values(set.limits)) {
        fc.assert(
          fc.property(
            fc.double({ min: 0, max: 600, noNaN: true }),
            fc.double({ min: 0, max: 600, noNaN: true }),
            (a, b) => {
              const [low, high] = [bandOf(Math.min(a, b), limits), bandOf(Math.max(a, b), limits)];
              return low <= high && BANDS[low] !== undefined && BANDS[high] !== undefined;
            },
          ),
        );
        for (const edge of edges(limits)) {
          const step = bandOf(edge + 1e-9, limits) - bandOf(edge - 1e-9, limits);
          expect(step).toBe(1);
        }
        expect(bandOf(limits.low, limits)).toBe(2);
        expect(bandOf(limits.high, limits)).toBe(2);
      }
    }
  });

  test.each([
    ['below 40', -1, 40, 'very-low'],
    ['below 54: nothing at 54 itself', -1, 54, 'very-low'],
    ['below 70: level 1 at least', -1, 70, 'low'],
    ['below 90 could be anything', -1, 90, 'in-range'],
    ['below, bound unknown', -1, Number.NaN, 'very-low'],
    ['above 400', 1, 400, 'very-high'],
    ['above 250', 1, 250, 'very-high'],
    ['above 180', 1, 180, 'high'],
    ['above 150 could be anything', 1, 150, 'in-range'],
    ['above, bound unknown', 1, Number.NaN, 'very-high'],
  ] as const)('a reading %s', (_, side, bound, band) => {
    expect(BANDS[bandBeyond(side, bound, targetSets.adult.limits['mg/dL'])]).toBe(band);
  });

  test('beyond the sensor in a set without a second high level', () => {
    const limits = targetSets['pregnancy-other'].limits['mg/dL'];
    expect(BANDS[bandBeyond(1, Number.NaN, limits)]).toBe('high');
    expect(BANDS[bandBeyond(1, 400, limits)]).toBe('high');
  });
});

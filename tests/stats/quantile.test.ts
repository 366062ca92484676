import fc from 'fast-check';
import { quantileSorted } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { median, quantile } from '../../src/stats/quantile.ts';

const PS = [0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95];
const TEN = [40, 55, 70, 90, 120, 160, 200, 250, 310, 400];
const FOURTEEN = [68, 74, 81, 95, 102, 110, 118, 126, 133, 147, 160, 178, 205, 246];

/** Hyndman & Fan 1996, Am Stat 50:361-365, estimator 7; the figures are those of R 4.2.2 and numpy 2.4.6. */
const TYPE_7: [string, number[], number[]][] = [
  ['ten values', TEN, [46.75, 53.5, 75, 140, 237.5, 319, 359.5]],
  ['a value a day for 14 days', FOURTEEN, [71.9, 76.1, 96.75, 122, 156.75, 196.9, 219.35]],
  ['one value', [123], [123, 123, 123, 123, 123, 123, 123]],
];

/** The same ten values by other estimators of the paper: what ours is not. */
const OTHERS: [number, number[]][] = [
  [1, [40, 40, 70, 120, 250, 310, 400]],
  [4, [40, 40, 62.5, 120, 225, 310, 355]],
  [5, [40, 47.5, 70, 140, 250, 355, 400]],
  [6, [40, 41.5, 66.25, 140, 265, 391, 400]],
  [8, [40, 45.5, 68.75, 140, 255, 367, 400]],
];

const all = (values: number[]) => PS.map((p) => quantile(Float64Array.from(values), p));
const sorted = fc
  .array(fc.double({ min: 20, max: 600, noNaN: true }), { minLength: 1, maxLength: 200 })
  .map((values) => Float64Array.from(values).sort());

describe('percentiles are of type 7', () => {
  test.each(TYPE_7)('%s', (_, values, expected) => {
    for (const [i, found] of all(values).entries()) expect(found).toBeCloseTo(expected[i]!, 9);
  });

  test.each(OTHERS)('and not of type %i', (_, theirs) => {
    expect(all(TEN)).not.toEqual(theirs);
  });

  test('simple-statistics agrees between the ends', () => {
    for (const p of PS) expect(quantile(Float64Array.from(TEN), p)).toBeCloseTo(quantileType7(TEN, p), 9);
    // Its own rule for ordinary samples; it differs only in how whole indices are met.
    expect(quantileSorted(TEN, 0.5)).toBe(quantile(Float64Array.from(TEN), 0.5));
  });

  test('they never fall as p grows, and stay between the ends', () => {
    fc.assert(
      fc.property(
        sorted,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (values, p, q) => {
          const [low, high] = [quantile(values, Math.min(p, q)), quantile(values, Math.max(p, q))];
          return values[0]! <= low && low <= high + 1e-9 && high <= values.at(-1)! + 1e-9;
        },
      ),
    );
  });

  test('median of values in any order', () => {
    expect(median([5, 1, 4])).toBe(4);
    expect(median([5, 1, 4, 2])).toBe(3);
  });
});

/** The definition itself, written out. */
function quantileType7(values: number[], p: number): number {
  const h = (values.length - 1) * p;
  const low = Math.floor(h);
  return values[low]! + (h - low) * (values[Math.min(low + 1, values.length - 1)]! - values[low]!);
}

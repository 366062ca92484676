import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareGroups } from '../../src/stats/permutation.ts';

/** The lady and the tea: 4 of 4 right by chance once in 70 ways (Fisher 1935, The Design of Experiments); twice, either way round. */
test('four against four, told apart without a fault', () => {
  const { p, least } = compareGroups([1, 1, 1, 1], [0, 0, 0, 0], 1);
  expect(p).toBeCloseTo(2 / 70, 12);
  expect(least).toBeCloseTo(2 / 70, 12);
});

/** Every arrangement counted by another way: all subsets as bit patterns. */
function bruteForce(a: number[], b: number[]): number {
  const all = [...a, ...b];
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const observed = Math.abs(mean(a) - mean(b));
  let far = 0;
  let ways = 0;
  for (let mask = 0; mask < 2 ** all.length; mask++) {
    const first = all.filter((_, i) => mask & (1 << i));
    if (first.length !== a.length) continue;
    ways++;
    if (Math.abs(mean(first) - mean(all.filter((_, i) => !(mask & (1 << i))))) >= observed - 1e-9) far++;
  }
  return far / ways;
}

test('counts as brute force does', () => {
  const some = (min: number, max: number) =>
    fc.array(fc.integer({ min: 0, max: 180 }), { minLength: min, maxLength: max });
  fc.assert(
    fc.property(some(3, 4), some(3, 7), (a, b) => {
      expect(compareGroups(a, b, 1).p).toBeCloseTo(bruteForce(a, b), 12);
    }),
    { numRuns: 40 },
  );
});

test('the interval leaves 0 out where the probability is small, and holds it where it is not', () => {
  const values = fc.array(fc.double({ min: 0, max: 180, noNaN: true }), { minLength: 4, maxLength: 14 });
  fc.assert(
    fc.property(values, values, (a, b) => {
      const { p, low, high, difference } = compareGroups(a, b, 7);
      expect(low).toBeLessThanOrEqual(difference);
      expect(high).toBeGreaterThanOrEqual(difference);
      if (p < 0.04) expect(low > 0 || high < 0).toBe(true);
      // Where arrangements tie with the observed one, an end of the interval lies at 0.
      if (p > 0.06) expect(low <= 1e-6 && high >= -1e-6).toBe(true);
    }),
    { numRuns: 200 },
  );
});

test('the first named is the first taken off, and the same seed gives the same', () => {
  const high = [150, 160, 170, 180, 175, 165, 155, 158, 171, 166];
  const low = [10, 20, 30, 5, 0, 12, 40, 33, 21, 18, 9, 2, 14];
  expect(compareGroups(high, low, 3).difference).toBeCloseTo(-compareGroups(low, high, 3).difference, 9);
  expect(compareGroups(high, low, 3)).toEqual(compareGroups(high, low, 3));
  // More than 2,000 ways: 999 are drawn, and the observed one makes 1,000.
  expect(compareGroups(high, low, 3).p).toBe(0.001);
});

test('values all alike are no difference', () => {
  expect(compareGroups([0, 0, 0], [0, 0, 0, 0], 1)).toMatchObject({ difference: 0, p: 1, low: 0, high: 0 });
});

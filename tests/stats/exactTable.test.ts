import { expect, test } from 'vitest';
import { exactTable } from '../../src/stats/exactTable.ts';

/** Fisher 1935, The Design of Experiments, ch. 2: 3 of 4 cups told rightly; one-sided 17 of 70, two-sided 34 of 70. */
test('the lady tasting tea', () => {
  expect(exactTable(3, 4, 1, 4).p).toBeCloseTo(34 / 70, 12);
  expect(exactTable(4, 4, 0, 4)).toEqual({ p: expect.closeTo(2 / 70, 12), least: expect.closeTo(2 / 70, 12) });
});

/** Fisher 1962, Confidence limits for a cross-product ratio: 10 of 13 and 2 of 17 convicted twins; the example in R's fisher.test. */
test('convictions of twins', () => {
  expect(exactTable(10, 13, 2, 17).p).toBeCloseTo(0.0005367, 7);
  expect(exactTable(2, 17, 10, 13).p).toBeCloseTo(0.0005367, 7);
});

/** All ways to choose which 8 of 26 days are low, by counting: 8 of 9 against 0 of 17. */
test('the least that margins allow is what lies furthest apart', () => {
  const ways = (n: number, k: number): number => (k === 0 ? 1 : (ways(n - 1, k - 1) * n) / k);
  expect(exactTable(8, 9, 0, 17).p).toBeCloseTo(9 / ways(26, 8), 12);
  expect(exactTable(0, 9, 8, 17).least).toBeCloseTo(9 / ways(26, 8), 12);
});

test('nothing to tell apart gives 1', () => {
  expect(exactTable(0, 5, 0, 7)).toEqual({ p: 1, least: 1 });
  expect(exactTable(5, 5, 7, 7)).toEqual({ p: 1, least: 1 });
});

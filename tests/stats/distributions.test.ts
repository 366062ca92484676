import { cumulativeStdNormalProbability } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { normalCdf, studentQuantile } from '../../src/stats/distributions.ts';
import { noneCountedUpper } from '../../src/stats/poisson.ts';

/** Upper critical values of Student's t, 0.975 and 0.95: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2 (from memory). */
const T_TABLE: [number, number, number][] = [
  [1, 12.706, 6.314],
  [2, 4.303, 2.92],
  [5, 2.571, 2.015],
  [9, 2.262, 1.833],
  [13, 2.16, 1.771],
  [27, 2.052, 1.703],
  [30, 2.042, 1.697],
  [100, 1.984, 1.66],
];

/** Standard normal table, as every textbook prints it. */
const Z_TABLE: [number, number][] = [
  [0, 0.5],
  [1, 0.8413],
  [1.645, 0.95],
  [1.96, 0.975],
  [2.576, 0.995],
  [-1.96, 0.025],
  [-3, 0.0013],
];

describe('distributions', () => {
  test.each(T_TABLE)('t with %i degrees of freedom', (degrees, t975, t95) => {
    expect(Math.abs(studentQuantile(0.975, degrees) - t975)).toBeLessThan(0.0006);
    expect(Math.abs(studentQuantile(0.95, degrees) - t95)).toBeLessThan(0.0006);
  });

  test.each(Z_TABLE)('normal at %d', (z, p) => {
    expect(Math.abs(normalCdf(z) - p)).toBeLessThan(0.00006);
    expect(Math.abs(normalCdf(z) - cumulativeStdNormalProbability(z))).toBeLessThan(0.0005);
  });

  test('many degrees of freedom come to the normal', () => {
    expect(studentQuantile(0.975, 5000)).toBeCloseTo(1.9604, 3);
  });

  test('none counted: 3.69 events are still possible (Garwood 1936)', () => {
    expect(noneCountedUpper(0.95)).toBeCloseTo(3.6889, 4);
  });
});

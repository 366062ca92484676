import fc from 'fast-check';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { meanOf, moments, sampleSd } from '../../src/stats/moments.ts';

const values = fc.array(fc.double({ min: 20, max: 600, noNaN: true }), { minLength: 2, maxLength: 60 });
const of = (list: number[], weights = list.map(() => 5)) =>
  moments(Float64Array.from(list), Float64Array.from(weights));

describe('mean and SD', () => {
  test('with equal weights are those of simple-statistics (n - 1)', () => {
    fc.assert(
      fc.property(values, (list) => {
        expect(of(list).mean).toBeCloseTo(mean(list), 6);
        expect(of(list).sd).toBeCloseTo(sampleStandardDeviation(list), 6);
        expect(meanOf(list)).toBeCloseTo(mean(list), 6);
        expect(sampleSd(list)).toBeCloseTo(sampleStandardDeviation(list), 6);
      }),
    );
  });

  test('a worked example of eight values', () => {
    const eight = [100, 150, 200, 120, 110, 130, 210, 100];
    expect(of(eight).sd).toBeCloseTo(43.424812, 6);
    expect((100 * of(eight).sd) / of(eight).mean).toBeCloseTo(31.017723, 6);
  });

  test('a value for twice the time weighs twice in the mean', () => {
    expect(of([100, 200], [10, 5]).mean).toBeCloseTo(400 / 3, 9);
  });

  test('unknown values are left out', () => {
    expect(of([100, Number.NaN, 200])).toEqual(of([100, 200]));
  });
});

import { describe, expect, test } from 'vitest';
import { eagOf, ifccOf, ngspOf } from '../../src/comparing/a1c.ts';
import { griOf } from '../../src/indices/gri.ts';
import { adrrOf, risk, riskIndices, symmetric } from '../../src/indices/kovatchev.ts';
import { labilitySum } from '../../src/indices/lability.ts';
import { mageOf } from '../../src/indices/mage.ts';
import { differences } from '../../src/indices/pairs.ts';
import { gvpOf, magOf } from '../../src/indices/paths.ts';
import { gradeOf, gradeScore, jIndexOf, mValueOf } from '../../src/indices/quality.ts';
import { spreadsOf } from '../../src/indices/spreads.ts';
import { sampleSd } from '../../src/stats/moments.ts';

/** A path of evenly spaced values without a gap. */
const path = (values: number[], step: number) => ({
  mgdl: Float64Array.from(values),
  minutes: Float64Array.from(values, (_, i) => i * step),
  stretch: new Uint32Array(values.length),
  interval: step,
});

const TWO_DAYS = [
  [100, 150, 200, 120],
  [110, 130, 210, 100],
];

/** Nathan 2008, Diabetes Care 31:1473-1478, printed table: A1C %, eAG mg/dL, eAG mmol/L. */
const ADAG: [number, number, number][] = [
  [5, 97, 5.4],
  [6, 126, 7.0],
  [7, 154, 8.6],
  [8, 183, 10.2],
  [9, 212, 11.8],
  [10, 240, 13.4],
  [11, 269, 14.9],
  [12, 298, 16.5],
];

/** Pairs printed in guidelines (ADA Standards of Care 2024; Endocrine Society 2019) and by the NGSP. */
const NGSP_IFCC: [number, number][] = [
  [5.0, 31],
  [6.0, 42],
  [6.5, 48],
  [7.0, 53],
  [7.5, 58],
  [8.0, 64],
  [8.5, 69],
  [9.0, 75],
  [10.0, 86],
  [11.0, 97],
  [12.0, 108],
];

describe('A1C', () => {
  test.each(ADAG)('eAG beside %d %%', (a1c, mgdl, mmol) => {
    expect(Math.abs(eagOf(a1c) - mgdl)).toBeLessThanOrEqual(0.5001);
    // The paper's table divides by 18.
    expect(Math.abs(eagOf(a1c) / 18 - mmol)).toBeLessThanOrEqual(0.0501);
  });

  test.each(NGSP_IFCC)('%d %% is %i mmol/mol', (percent, mmolPerMol) => {
    expect(Math.abs(ifccOf(percent) - mmolPerMol)).toBeLessThanOrEqual(0.5);
    expect(ngspOf(ifccOf(percent))).toBeCloseTo(percent, 9);
  });
});

/** Weights of Klonoff 2023; components from memory. veryLow, low, veryHigh, high -> hypo, hyper, GRI, zone. */
test.each([
  [0, 0, 0, 0, 0, 0, 0, 'A'],
  [1, 3, 5, 20, 3.4, 15, 34.2, 'B'],
  [0.5, 1.5, 2, 13, 1.7, 8.5, 18.7, 'A'],
  [2, 6, 3, 15, 6.8, 10.5, 37.2, 'B'],
  [0, 0, 12.5, 25, 0, 25, 40, 'B'],
  [3, 8, 20, 24, 9.4, 32, 79.4, 'D'],
  [5, 10, 20, 30, 13, 35, 95, 'E'],
  [0, 0, 0, 25, 0, 12.5, 20, 'A'],
  [0, 0, 12.5, 0, 0, 12.5, 20, 'A'],
  [20, 20, 30, 30, 36, 45, 100, 'E'],
] as const)('GRI of %d, %d, %d, %d', (veryLow, low, veryHigh, high, hypo, hyper, gri, zone) => {
  const found = griOf(veryLow, low, high, veryHigh);
  expect([found.hypo, found.hyper, found.gri]).toEqual([hypo, hyper, gri].map((value) => expect.closeTo(value, 6)));
  expect(found.zone).toBe(zone);
});

/** Worked from the formulas (constants of Kovatchev 1998 from memory). */
describe('risk of low and high glucose', () => {
  test.each([
    [20, -3.162934, 100.041508],
    [40, -1.908338, 36.417547],
    [54, -1.358726, 18.461365],
    [70, -0.880636, 7.755206],
    [140, 0.408043, 1.664988],
    [180, 0.879165, 7.729312],
    [250, 1.497872, 22.4362],
    [400, 2.388433, 57.046099],
    [600, 3.161456, 99.948051],
  ])('at %d mg/dL', (mgdl, f, r) => {
    expect(symmetric(mgdl)).toBeCloseTo(f, 5);
    expect(risk(mgdl)).toBeCloseTo(r, 4);
  });

  test('over values and days', () => {
    const found = riskIndices([60, 100, 250, 80, 120, 180]);
    expect([found.lbgi, found.hbgi]).toEqual([expect.closeTo(3.011335, 5), expect.closeTo(5.051607, 5)]);
    expect(
      adrrOf([
        [60, 100, 250],
        [80, 120, 180],
      ]),
    ).toBeCloseTo(23.875734, 5);
  });
});

/** Worked by hand from the definitions. */
describe('excursions and paths', () => {
  test('MAGE (Service 1970)', () => {
    const values = [100, 180, 90, 200, 110, 130, 115, 190, 95, 100];
    expect(sampleSd(values)).toBeCloseTo(42.478753, 6);
    expect(mageOf(values)).toBeCloseTo(90, 9);
    expect(mageOf(values.slice(1))).toBeCloseTo(91.666667, 5);
    expect(mageOf([100, 100, 100, 100])).toBeNull();
  });

  test('MODD (Molnar 1972): two days of four values', () => {
    const dayToDay = differences(path(TWO_DAYS.flat(), 360), 1440, false).map(Math.abs);
    expect(dayToDay).toEqual([10, 20, 10, 20]);
  });

  test('CONGA-1 (McDonnell 2005): hourly values', () => {
    expect(sampleSd(differences(path([100, 120, 150, 140, 110, 90], 60), 60, true))).toBeCloseTo(25.884358, 6);
  });

  test('pairs over a gap do not count, nor readings off the clock', () => {
    const cut = { ...path([100, 120, 150, 140], 60), stretch: Uint32Array.from([0, 0, 1, 1]) };
    expect(differences(cut, 60, true)).toEqual([20, -10]);
    expect(differences(cut, 60, false)).toEqual([20, 30, -10]);
    expect(differences(cut, 100, false)).toEqual([50, 20]);
  });

  test('GVP (Peyser 2018) and MAG (Hermanides 2010)', () => {
    expect(gvpOf(path([100, 105, 110, 105, 100], 5))).toBeCloseTo(41.421356, 5);
    expect(gvpOf(path([120, 120, 120], 5))).toBeCloseTo(0, 9);
    expect(magOf(path([100, 105, 110, 105, 100], 5))).toBeCloseTo(60, 9);
    expect(magOf(path([100], 5))).toBeNull();
  });

  test('lability (Ryan 2004): 5, 9 and 6 mmol/L at 0, 2 and 5 hours', () => {
    expect(labilitySum([5, 9, 6], [0, 120, 300])).toBeCloseTo(11, 9);
    expect(labilitySum([5, 30, 9, 30, 6], [0, 30, 120, 150, 300])).toBeCloseTo(11, 9);
    expect(labilitySum([5, 9], [0, 721])).toBe(0);
  });

  test('SD family (Rodbard 2009): two days of four values', () => {
    const found = spreadsOf(TWO_DAYS)!;
    expect(found.total).toBeCloseTo(43.424812, 6);
    expect(found.within).toBeCloseTo(46.704946, 6);
    expect(found.dailyMeans).toBeCloseTo(3.535534, 6);
    expect(found.clockTimes).toBeCloseTo(46.007246, 6);
    expect(found.betweenDays).toBeCloseTo(10.606602, 6);
    expect(found.cvWithin).toBeCloseTo(33.412295, 6);
  });
});

describe('quality indices', () => {
  test.each([
    [3.0, 11.067287],
    [3.9, 1.986356],
    [5.0, 0.008448],
    [5.5, 0.368467],
    [7.8, 5.180992],
    [10.0, 10.88],
    [13.9, 20.20731],
    [20.0, 31.974249],
    [2.0, 50],
    [33.3, 49.87],
  ])('GRADE (Hill 2007) of %d mmol/L', (mmol, score) => {
    expect(Math.abs(gradeScore(mmol) - score)).toBeLessThan(mmol > 30 ? 0.005 : 1e-5);
  });

  test('GRADE split', () => {
    const found = gradeOf([3, 5, 8, 12]);
    expect(found.mean).toBeCloseTo(8.15359, 5);
    expect(found.median).toBeCloseTo(8.379799, 5);
    expect(100 * found.hypo).toBeCloseTo(33.933787, 4);
    expect(100 * found.eu).toBeCloseTo(0.025904, 4);
    expect(100 * found.hyper).toBeCloseTo(66.040309, 4);
  });

  test('M-value (Schlichtkrull 1965), ideal 120', () => {
    expect(mValueOf(new Array<number>(25).fill(60))).toBeCloseTo(27.279055, 5);
    expect(mValueOf([80, 120, 240])).toBeCloseTo(18.913105, 5);
  });

  test('J-index (Wojcicki 1995)', () => {
    expect(jIndexOf(150, 50)).toBeCloseTo(40, 9);
    // The mmol/L form has 0.324 = 0.001 x 18^2.
    expect(jIndexOf(8.3 * 18, 2.8 * 18)).toBeCloseTo(39.92004, 5);
  });
});

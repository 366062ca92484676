import { describe, expect, test } from 'vitest';
import { gmiOf } from '../../src/measures/gmi.ts';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { MGDL_PER_MMOL } from '../../src/units.ts';
import { timelineOf } from '../support/timeline.ts';
import { many, runOf, type Slot } from './runs.ts';

const of = (slots: Slot[], options = {}) => measure(runOf(slots, options), targetSets.adult);

describe('mean, SD, CV', () => {
  test('a worked example of two days of four values (sample SD, n - 1)', () => {
    const value = (minute: number, day: number) =>
      [
        [100, 150, 200, 120],
        [110, 130, 210, 100],
      ][day]![minute / 360]!;
    const { mean, sd, cv } = measure(timelineOf({ days: 2, every: 360, value }), targetSets.adult);
    expect(mean).toMatchObject({ ok: true, value: { mgdl: { value: 140, low: null, high: null } }, n: 8 });
    expect(sd.ok && sd.value).toBeCloseTo(43.424812, 6);
    expect(cv.ok && cv.value).toBeCloseTo(31.017723, 6);
  });

  test('mean with an interval around it', () => {
    const { mean } = measure(timelineOf({ value: (_, day) => 120 + 5 * day }), targetSets.adult);
    if (!mean.ok) throw new Error(mean.why);
    const { value, low, high } = mean.value.mgdl;
    expect(value).toBeCloseTo(152.5, 9);
    // Days are 5 apart: SD 20.9, standard error 5.59. Neighbours that correlate by 0.25 make it 1.297 times as large and
    // 14 days count for 8 degrees of freedom: t(8) 2.306 gives 16.7 to either side.
    expect(Math.abs(value - low! - 16.7)).toBeLessThan(1.5);
    expect(Math.abs(high! - value - 16.7)).toBeLessThan(1.5);
  });

  test('readings at the sensor limit make the mean a bound', () => {
    const { mean, sd, cv } = of([100, { native: 40, limit: -1 }, 130, { native: 400, limit: 1 }]);
    expect(mean).toMatchObject({ value: { mgdl: { value: 167.5 }, bounded: true, bound: 'both', censored: 2 }, n: 4 });
    expect([sd, cv]).toMatchObject([{ n: 4 }, { n: 4 }]);
  });

  test('which bound it is follows from the side on which readings are unknown', () => {
    const boundOf = (...values: Parameters<typeof of>[0]) => {
      const { mean } = of(values);
      return mean.ok && mean.value.bound;
    };
    expect(boundOf(100, { native: 400, limit: 1 }, 130)).toBe('lower');
    expect(boundOf(100, { native: 40, limit: -1 }, 130)).toBe('upper');
    expect(boundOf(100, 110, 130)).toBeNull();
  });

  test('an unknown bound is left out of mean and SD, and still makes a bound of the mean', () => {
    const { mean, sd, timeInBands } = of([100, { native: Number.NaN, limit: -1 }, 130]);
    expect(mean).toMatchObject({ value: { mgdl: { value: 115 }, bounded: true, bound: 'upper', censored: 1 }, n: 2 });
    expect(sd).toMatchObject({ ok: true, n: 2 });
    expect(timeInBands.ok && timeInBands.value.exclusive['very-low'].value).toBeCloseTo(1 / 3, 9);
  });

  test('nothing but unknown bounds is no mean', () => {
    const { mean, sd, cv } = of(many({ native: Number.NaN, limit: 1 }, 6));
    for (const measured of [mean, sd, cv]) expect(measured).toEqual({ ok: false, why: 'bound-unknown' });
  });

  test('two sensors with other intervals weigh by time', () => {
    const value = (minute: number, day: number) => (day >= 7 && minute % 15 !== 0 ? null : day < 7 ? 100 : 200);
    const { mean } = measure(timelineOf({ value }), targetSets.adult);
    expect(mean.ok && mean.value.mgdl.value).toBeCloseTo(150, 1);
  });
});

/** Bergenstal 2018, Diabetes Care 41:2275-2280, doi 10.2337/dc18-1581: its printed tables. */
const PERCENT: [number, number][] = [
  [100, 5.7],
  [125, 6.3],
  [150, 6.9],
  [175, 7.5],
  [200, 8.1],
  [225, 8.7],
  [250, 9.3],
  [275, 9.9],
  [300, 10.5],
  [350, 11.7],
  // HL7 CGM implementation guide, example (repository commit 0b247ae).
  [145, 6.8],
];
const MMOL_PER_MOL: [number, number][] = [
  [5, 36.2],
  [6, 40.9],
  [7, 45.7],
  [8, 50.4],
  [9, 55.1],
  [10, 59.8],
  [12, 69.2],
  [14, 78.6],
  [16, 88.0],
  [18, 97.4],
];

describe('GMI', () => {
  test.each(PERCENT)('%d mg/dL is %d %%', (mgdl, percent) => {
    expect(Math.abs(gmiOf(mgdl).percent - percent)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  test.each(MMOL_PER_MOL)('%d mmol/L is %d mmol/mol', (mmol, expected) => {
    expect(Math.abs(gmiOf(mmol * MGDL_PER_MMOL).mmolPerMol - expected)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  test('is 12.71 + 4.70587 × mmol/L in mmol/mol, to the last figure printed there (Bergenstal 2018)', () => {
    expect(gmiOf(10 * MGDL_PER_MMOL).mmolPerMol).toBeCloseTo(59.7687, 6);
  });

  test('comes from the mean, with 72 hours of readings', () => {
    const three = measure(timelineOf({ days: 3, value: () => 154 }), targetSets.adult).gmi;
    expect(three.ok && three.value.percent).toBeCloseTo(6.99368, 6);
    const less = timelineOf({ days: 3, value: () => 154, without: [{ day: 1, from: 0, to: 60 }] });
    expect(measure(less, targetSets.adult).gmi).toEqual({ ok: false, why: 'too-few-readings' });
  });

  test.each(['pregnancy-type-1', 'pregnancy-other'] as const)('is not given in %s', (id) => {
    const { gmi } = measure(timelineOf({ value: () => 110 }), targetSets[id]);
    expect(gmi).toEqual({ ok: false, why: 'not-for-these-targets' });
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { curveOf, isSmooth, roughness } from '../../../src/readers/evidence/curve.ts';
import { unitSteps } from '../../../src/readers/evidence/levels.ts';
import { doubtOf } from '../../../src/readers/evidence/look.ts';

/** Invented curves every five minutes. */
const wave = (n: number, at: (i: number) => number): [Float64Array, Float64Array] => [
  Float64Array.from({ length: n }, (_, i) => at(i)),
  Float64Array.from({ length: n }, (_, i) => i * 300_000),
];
const day = (i: number): number => Math.round(140 + 50 * Math.sin(i / 30) + 12 * Math.sin(i / 7));
const scattered = (i: number): number => 60 + ((i * 7919) % 211);

describe('a curve', () => {
  it('tells a sensor from scattered values', () => {
    expect(isSmooth(curveOf(...wave(600, day)))).toBe(true);
    expect(isSmooth(curveOf(...wave(600, scattered)))).toBe(false);
    expect(roughness(curveOf(...wave(10, day)))).toBeUndefined();
  });
  it('counts what jumps out and back', () => {
    const { jumps, jumpAt } = curveOf(...wave(600, (i) => (i % 40 === 7 ? 4 : day(i))));
    expect([jumps, jumpAt]).toEqual([15, 7]);
  });
  it('leaves out what has no number or no time', () => {
    const [value, wall] = wave(100, day);
    value[3] = Number.NaN;
    wall[50] = Number.NaN;
    expect(curveOf(value, wall).n).toBe(98);
  });
});

describe('a series as a physiologist sees it', () => {
  const cases: [string, (i: number) => number, 'mg/dL' | 'mmol/L', string | undefined][] = [
    ['glucose in mg/dL', day, 'mg/dL', undefined],
    ['glucose in mmol/L', (i) => day(i) / 18, 'mmol/L', undefined],
    ['10 to 33 called mg/dL', (i) => 4 + day(i) / 10, 'mg/dL', 'low'],
    ['0.9 to 2.2 called mmol/L', (i) => day(i) / 100, 'mmol/L', 'low'],
    ['mg/dL called mmol/L', (i) => day(i) / 4, 'mmol/L', 'high'],
    ['doses among readings', (i) => (i % 20 === 0 ? 6 : day(i)), 'mg/dL', 'jumps'],
    ['scattered values', scattered, 'mg/dL', 'rough'],
  ];
  test.each(cases)('%s', (_, at, unit, why) => {
    expect(doubtOf(curveOf(...wave(800, at)), unit)?.why).toBe(why);
  });
  it('judges no handful', () => {
    expect(doubtOf(curveOf(...wave(20, () => 12)), 'mg/dL')).toBeUndefined();
  });
});

describe('a change of unit', () => {
  it('is found by its step', () => {
    const both = wave(200, (i) => (i < 90 ? day(i) / 18 : day(i)))[0];
    expect(unitSteps(both)).toEqual([90]);
    expect(unitSteps(wave(200, day)[0])).toEqual([]);
    expect(unitSteps(wave(200, (i) => day(i) / 18)[0])).toEqual([]);
  });
  it('is not found in a few very low readings', () => {
    expect(unitSteps(wave(200, (i) => (i > 50 && i < 60 ? 30 : day(i) - 40))[0])).toEqual([]);
  });
});

/** T1D-UOM, tests/data/t1d_uom/README.md: day/month/year and mmol/L. */
test.each(['2314', '2320', '2404'])('the recording of person %s is far from every bound', (person) => {
  const rows = readFileSync(`tests/data/t1d_uom/glucose-${person}.csv`, 'utf8').trim().split(/\r?\n/).slice(1);
  const value = Float64Array.from(rows, (row) => Number(row.split(',')[1]));
  const wall = Float64Array.from(rows, (row) => {
    const [, d, m, y, clock] = /^(\d\d)\/(\d\d)\/(\d{4}) (\d\d:\d\d)/.exec(row)!;
    return Date.parse(`${y}-${m}-${d}T${clock}Z`);
  });
  const curve = curveOf(value, wall);
  expect(doubtOf(curve, 'mmol/L')).toBeUndefined();
  expect(roughness(curve)).toBeLessThan(0.2);
  expect(curve.jumps).toBeLessThan(3);
});

import { describe, expect, test } from 'vitest';
import { gridZone, LOWER, UPPER } from '../../src/measures/consensusGrid.ts';
import { NOTHING_ASKED } from '../../src/measures/context.ts';
import { agreement } from '../../src/measures/fingersticks.ts';
import { measure } from '../../src/measures/index.ts';
import type { MgPerDl } from '../../src/model/glucose.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { StickPair } from '../../src/model/trust.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

const of = (days: DaysOf, asked = NOTHING_ASKED): Measures =>
  measure(timelineOf(days), targetSets.adult, undefined, asked);

const value = <T>(measured: { ok: true; value: T } | { ok: false; why: string }): T => {
  if (!measured.ok) throw new Error(measured.why);
  return measured.value;
};

describe('agreement with fingersticks', () => {
  /** Worked from the formulas of ISO 15197:2013 and the usual definitions; no published example was found. */
  test('of six pairs', () => {
    const pairs = [
      [60, 70],
      [80, 74],
      [100, 112],
      [150, 140],
      [200, 236],
      [300, 290],
    ].map(([finger, sensor]) => ({ finger, sensor, hoursWorn: null, zone: 'A' }) as unknown as StickPair);
    const found = agreement(pairs);
    expect(100 * found.mard).toBeCloseTo(10.694, 3);
    expect(100 * found.medianArd).toBeCloseTo(9.75, 3);
    expect(found.mad).toBeCloseTo(14, 9);
    expect(found.bias).toBeCloseTo(5.333, 3);
    expect(found.within15).toBeCloseTo(5 / 6, 9);
    expect(found.within20).toBe(1);
  });

  /** Coordinates of Parkes 2000 and Pfützner 2013 are from memory, and so are these zones. */
  test.each([
    [100, 100, 'A'],
    [50, 49, 'A'],
    [70, 90, 'A'],
    [70, 109, 'B'],
    [70, 112, 'C'],
    [200, 145, 'B'],
    [300, 120, 'C'],
    [300, 50, 'D'],
    [50, 200, 'D'],
    [20, 200, 'E'],
    [400, 400, 'A'],
    [550, 449, 'B'],
  ] as const)('a finger value of %i with a sensor of %i lies in zone %s', (finger, sensor, zone) => {
    expect(gridZone(finger, sensor)).toBe(zone);
  });

  test('zones lie inside one another everywhere, going away from agreement', () => {
    const order = 'ABCDE';
    for (let finger = 10; finger <= 550; finger += 20) {
      for (const way of [1, -1]) {
        let worst = 0;
        for (let sensor = finger; sensor >= 0 && sensor <= 550; sensor += way * 5) {
          const zone = order.indexOf(gridZone(finger, sensor));
          expect(zone, `${finger} ${sensor}`).toBeGreaterThanOrEqual(worst);
          worst = zone;
        }
      }
    }
    expect([UPPER.length, LOWER.length]).toEqual([4, 3]);
  });

  const stick = (minute: number, amount: number, unit = 'mg/dL') => ({
    day: 0,
    minute,
    kind: 'fingerstick' as const,
    amount,
    unit,
  });
  const pairsOf = (days: Omit<DaysOf, 'value'>) =>
    value(of({ value: (minute) => 100 + minute / 10, days: 1, ...days }).fingersticks);

  test.each<[string, Omit<DaysOf, 'value'>, [number, number][]]>([
    ['the nearest reading', { notes: [stick(602, 90)] }, [[90, 160]]],
    ['five minutes away', { notes: [stick(605, 90)], without: [{ from: 590, to: 610 }] }, [[90, 161]]],
    ['the other unit', { notes: [stick(600, 5, 'mmol/L')] }, [[90.078, 160]]],
    [
      'a reading once',
      { notes: [stick(600, 90), stick(601, 95)] },
      [
        [90, 160],
        [95, 160.5],
      ],
    ],
    ['a sensor every 15 minutes', { every: 15, notes: [stick(607, 90)] }, [[90, 160]]],
  ])('pairs with %s', (_, days, expected) => {
    const found = pairsOf(days).pairs.map(({ finger, sensor }) => [finger, sensor]);
    expect(found).toEqual(expected.map((pair) => pair.map((each) => expect.closeTo(each, 3))));
  });

  test.each<[string, Omit<DaysOf, 'value'>, string]>([
    ['in a gap', { notes: [stick(600, 90)], without: [{ from: 590, to: 630 }] }, 'no-pairs'],
    ['calibrations', { notes: [{ ...stick(600, 90), kind: 'calibration' }] }, 'none-noted'],
    ['without a time', { notes: [{ day: 0, kind: 'fingerstick', amount: 90, unit: 'mg/dL' }] }, 'none-noted'],
    ['in another unit', { notes: [stick(600, 90, 'g')] }, 'none-noted'],
  ])('makes no pair %s', (_, days, why) => {
    expect(of({ value: () => 100, days: 1, ...days }).fingersticks).toEqual({ ok: false, why });
  });

  test('nor with a reading at the limit of the sensor', () => {
    const found = of({ value: () => ({ native: 400, limit: 1 }), days: 1, notes: [stick(600, 390)] });
    expect(found.fingersticks).toEqual({ ok: false, why: 'no-pairs' });
  });
});

describe('lows that look like pressure', () => {
  const dip = (from: number, to: number, slope: number) => (minute: number) => {
    const edge = Math.min(minute - from, to - minute);
    return edge < 0 ? 110 : Math.max(58, 110 - slope * edge);
  };
  test.each([
    ['sudden at night', dip(180, 240, 10), 1],
    ['sudden by day', dip(780, 840, 10), 0],
    ['slow at night', dip(60, 240, 1), 0],
    ['sudden, for over two hours', dip(60, 240, 10), 0],
  ])('%s', (_, glucose, expected) => {
    const found = of({ value: glucose, days: 2 });
    const { list, lows } = value(found.pressedLows);
    expect(list).toHaveLength(2 * expected);
    expect(lows).toBe(2);
    expect(value(found.lows).list).toHaveLength(2);
  });
});

test.each([
  ['flat for 60 minutes', (minute: number) => (minute >= 600 && minute < 660 ? 120 : 100 + (minute % 7)), [1, 0]],
  ['flat for 55 minutes', (minute: number) => (minute >= 600 && minute < 655 ? 120 : 100 + (minute % 7)), [0, 0]],
  ['a jump of 60 in 5 minutes', (minute: number) => (minute < 600 ? 100 + (minute % 7) : 160 + (minute % 7)), [0, 1]],
  ['a step of 25 in 5 minutes', (minute: number) => (minute < 600 ? 100 + (minute % 3) : 125 + (minute % 3)), [0, 0]],
] as const)('odd stretches: %s', (_, glucose, [flat, jumps]) => {
  const found = value(of({ value: glucose, days: 1 }).oddStretches);
  expect([found.flat.length, found.jumps.length]).toEqual([flat, jumps]);
});

test('a straight fall of 3 mg/dL a minute is a slope of 3', () => {
  const found = value(
    of({ value: (minute) => (minute < 600 || minute > 630 ? 150 : 150 - 3 * (minute - 600)), days: 1 }).rates,
  );
  expect(found.steepest!.rate).toBeCloseTo(-3, 9);
  expect(found.falling.over2).toBeGreaterThan(0);
});

test('alarms beside lows and at night', () => {
  const value14 = (minute: number) => (minute >= 120 && minute < 180 ? 60 : 110);
  const alarm = (day: number, minute: number) => ({ day, minute, kind: 'alarm' as const });
  const found = value(of({ value: value14, days: 4, notes: [alarm(0, 110), alarm(1, 150), alarm(2, 900)] }).alarms);
  expect(found).toMatchObject({ noted: 3, lows: 4, lowsWith: 2, withoutLow: 1 });
  expect(found.nights.map(({ alarms }) => alarms)).toEqual([1, 1]);
});

test.each([
  ['Paracetamol 500', 1],
  ['2x PARACETAMOL', 1],
  ['vitamin-C', 1],
  ['paracetamolish', 0],
  ['metformin', 0],
])('medicine noted as "%s"', (label, expected) => {
  const asked = {
    ...NOTHING_ASKED,
    medicines: [
      { id: 'a', words: ['paracetamol'], source: '' },
      { id: 'c', words: ['vitamin c'], source: '' },
    ],
  };
  const found = of({ value: () => 100, days: 1, notes: [{ day: 0, minute: 600, kind: 'medication', label }] }, asked);
  expect(value(found.medicinesNoted).list).toHaveLength(expected);
});

test('days of wear are counted from a start that is seen', () => {
  const found = value(of({ value: () => 100, days: 9, without: [{ day: 5, from: 600, to: 720 }] }).sensors);
  expect(found.worn.map(({ begun }) => begun)).toEqual([false, true]);
  expect(found.worn[1]!.pauseMinutes).toBeCloseTo(125, 0);
  expect(found.byDay).toHaveLength(4);
  expect(found.byDay.every(({ share }) => share > 0.99)).toBe(true);
});

/** Printed eAG and IFCC pairs are checked in tests/indices; here only that the two stand side by side. */
test.each([
  [{ value: 7, unit: '%' as const }, 7, 53],
  [{ value: 53, unit: 'mmol/mol' as const }, 7, 53],
])('a laboratory A1C of %j', (a1c, percent, mmol) => {
  const found = value(of({ value: () => 154, days: 14 }, { ...NOTHING_ASKED, a1c }).labA1c);
  expect(found.percent).toBeCloseTo(percent, 1);
  expect(found.mmolPerMol).toBeCloseTo(mmol, 0);
  expect(found.eag as MgPerDl).toBeCloseTo(154, 0);
  expect(found.gmi).toBeCloseTo(3.31 + 0.02392 * 154, 9);
});

describe('what 0 leaves open', () => {
  test('a share of 0 has an upper bound: 3.69 episodes of an hour in the time seen (Garwood 1936)', () => {
    const found = value(of({ value: () => 120, days: 14 }).timeInBands);
    expect(found.exclusive['very-low']).toMatchObject({ value: 0, low: 0, method: 'none-seen' });
    expect(found.exclusive['very-low'].high).toBeCloseTo((-Math.log(0.025) * 60) / (14 * 1440), 9);
    expect(found.cumulative.high.high).toBeCloseTo((-Math.log(0.025) * 120) / (14 * 1440), 9);
  });
  test('and none with 9 days', () => {
    expect(value(of({ value: () => 120, days: 9 }).timeInBands).exclusive['very-low'].high).toBeNull();
  });
});

test('the CV and the curves have intervals around them, wider where days differ more', () => {
  const wave = (spread: number) => (minute: number, day: number) =>
    140 + 40 * Math.sin(minute / 200) + spread * Math.sin(day * 2.4) * Math.cos(minute / 300);
  const [narrow, wide] = [5, 40].map((spread) => of({ value: wave(spread), days: 14 })) as [Measures, Measures];
  for (const found of [narrow, wide]) {
    const { value: cv, low, high } = value(found.cvRange);
    expect(low!).toBeLessThan(cv);
    expect(high!).toBeGreaterThan(cv);
    expect(cv).toBeCloseTo(value(found.cv), 1);
    for (const { p25, p50, p75 } of value(found.curveRanges))
      for (const curve of [p25, p50, p75]) {
        expect(curve.low).toBeLessThanOrEqual(curve.value);
        expect(curve.high).toBeGreaterThanOrEqual(curve.value);
      }
  }
  const width = (found: Measures) => value(found.cvRange).high! - value(found.cvRange).low!;
  expect(width(wide)).toBeGreaterThan(width(narrow));
});

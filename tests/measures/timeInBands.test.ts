import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { TimeInBands } from '../../src/model/measures.ts';
import type { TargetSet } from '../../src/model/targets.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { BANDS } from '../../src/targets/bands.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';
import { runOf } from './runs.ts';

function found(timeline: Timeline, id: TargetSet['id'] = 'adult'): TimeInBands {
  const { timeInBands } = measure(timeline, targetSets[id]);
  if (!timeInBands.ok) throw new Error(timeInBands.why);
  return timeInBands.value;
}

const shares = ({ exclusive }: TimeInBands) => BANDS.map((band) => exclusive[band].value);

describe('time in bands', () => {
  test('counts the readings of each band', () => {
    const bands = found(runOf([40, 60, 60, 100, 100, 100, 100, 200, 200, 300]));
    expect(shares(bands)).toEqual([0.1, 0.2, 0.4, 0.2, 0.1].map((share) => expect.closeTo(share, 12)));
    expect(bands.minutes).toEqual({ 'very-low': 5, low: 10, 'in-range': 20, high: 10, 'very-high': 5 });
    expect([bands.cumulative.low.value, bands.cumulative.high.value]).toEqual([
      expect.closeTo(0.3, 12),
      expect.closeTo(0.3, 12),
    ]);
  });

  test('missing time counts in no band', () => {
    const half = found(timelineOf({ value: (minute) => (minute < 720 ? 100 : null) }));
    expect(half.exclusive['in-range'].value).toBe(1);
  });

  /** Reading by reading on the limits of its own unit: converting first would move 10.0 and 7.8 (Battelino 2019). */
  test.each([
    ['adult', 10.0, 'in-range'],
    ['adult', 10.1, 'high'],
    ['adult', 13.9, 'high'],
    ['adult', 3.9, 'in-range'],
    ['pregnancy-type-1', 7.8, 'in-range'],
    ['pregnancy-type-1', 7.9, 'high'],
    ['pregnancy-type-1', 3.4, 'low'],
  ] as const)('%s: %d mmol/L is %s', (id, value, band) => {
    expect(found(runOf([value, value, value], { unit: 'mmol/L' }), id).exclusive[band].value).toBe(1);
  });

  test('shares sum to 1, cumulative ones are their parts, intervals hold the estimate', () => {
    const day = fc.array(fc.integer({ min: 40, max: 400 }), { minLength: 24, maxLength: 24 });
    fc.assert(
      fc.property(fc.array(day, { minLength: 10, maxLength: 16 }), (days) => {
        const bands = found(timelineOf({ days: days.length, every: 60, value: (minute, d) => days[d]![minute / 60]! }));
        const sum = shares(bands).reduce((a, b) => a + b, 0);
        expect(sum).toBeCloseTo(1, 9);
        const { exclusive, cumulative } = bands;
        expect(cumulative.low.value).toBeCloseTo(exclusive['very-low'].value + exclusive.low.value, 9);
        expect(cumulative.high.value).toBeCloseTo(exclusive['very-high'].value + exclusive.high.value, 9);
        for (const { value, low, high } of [...Object.values(exclusive), cumulative.low, cumulative.high]) {
          if (low === null || high === null) continue;
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(value);
          expect(high).toBeGreaterThanOrEqual(value);
          expect(high).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 15 },
    );
  });
});

/** Minutes a day out of 1440 at one-minute readings: 70 % is 1008 (printed as 16 h 48 min), 4 % is 57.6, 1 % 14.4. */
const VERDICTS: [string, (minute: number) => number, string, boolean][] = [
  ['exactly 70 % is not above 70 %', (minute) => (minute < 1008 ? 100 : 200), 'in-range', false],
  ['one minute more is', (minute) => (minute < 1009 ? 100 : 200), 'in-range', true],
  ['exactly 25 % is not below 25 %', (minute) => (minute < 360 ? 200 : 100), 'high', false],
  ['very high counts into high', (minute) => (minute < 60 ? 300 : minute < 360 ? 200 : 100), 'high', false],
  ['exactly 5 % very high', (minute) => (minute < 72 ? 300 : 100), 'very-high', false],
  ['57 minutes low are below 4 %', (minute) => (minute < 57 ? 60 : 100), 'low', true],
  ['58 are not', (minute) => (minute < 58 ? 60 : 100), 'low', false],
  ['very low counts into low', (minute) => (minute < 14 ? 50 : minute < 58 ? 60 : 100), 'low', false],
  ['14 minutes very low are below 1 %', (minute) => (minute < 14 ? 50 : 100), 'very-low', true],
  ['15 are not', (minute) => (minute < 15 ? 50 : 100), 'very-low', false],
];

describe('goals (Battelino 2019: strict inequalities, low and high cumulative)', () => {
  test.each(VERDICTS)('%s', (_, value, of, met) => {
    const { goals } = found(timelineOf({ days: 1, every: 1, value }));
    expect(goals.find((goal) => goal.of === of)!.met).toBe(met);
  });

  // Battelino 2019: 14 days with 70 % of the readings.
  test.each([
    ['14 full days', 14, () => 100, true],
    ['13 full days', 13, () => 100, false],
    ['14 days at 70 %', 14, (minute: number) => (minute < 1008 ? 100 : null), true],
    ['14 days at 69 %', 14, (minute: number) => (minute < 994 ? 100 : null), false],
  ])('judged on enough data: %s', (_, days, value, judged) => {
    expect(found(timelineOf({ days, every: 1, value })).judged).toBe(judged);
  });

  test('none where the source prints none', () => {
    expect(found(timelineOf({ days: 1, value: () => 150 }), 'pregnancy-other').goals).toEqual([]);
  });
});

describe('intervals', () => {
  const mixed = (days: number) =>
    timelineOf({ days, value: (minute, day) => (minute < 600 + 20 * (day % 5) ? 100 : 200) });

  test('need ten full days', () => {
    expect(found(mixed(9)).exclusive['in-range']).toMatchObject({ low: null, high: null, days: 9 });
    expect(found(mixed(10)).exclusive['in-range'].low).not.toBeNull();
    const thin = timelineOf({ days: 14, value: (minute, day) => (day > 8 && minute > 600 ? null : 100 + day) });
    expect(found(thin).exclusive['in-range'].low).toBeNull();
  });

  test('from a bound to 1 for a share of exactly 1, from 0 to a bound for one of exactly 0', () => {
    const { exclusive } = found(timelineOf({ value: () => 100 }));
    // What is left is what three episodes too few to have been counted could have taken (2 hours each).
    expect(exclusive['in-range'].low).toBeCloseTo(1 - exclusive.high.high!, 12);
    for (const band of BANDS) {
      if (band === 'in-range') expect(exclusive[band]).toMatchObject({ high: 1, method: 'none-seen' });
      else expect(exclusive[band]).toMatchObject({ low: 0, high: expect.any(Number), method: 'none-seen' });
    }
  });

  test('the same data give the same interval', () => {
    expect(found(mixed(14))).toEqual(found(mixed(14)));
  });
});

import { describe, expect, test } from 'vitest';
import { agreement } from '../../src/measures/fingersticks.ts';
import { measure } from '../../src/measures/index.ts';
import type { StickPair } from '../../src/model/trust.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, type NoteOn, timelineOf } from '../support/timeline.ts';

/** Pairing is ours; figures worked from their definitions, no published example was found. */
const pairsLike = (...pairs: [finger: number, sensor: number, hoursWorn?: number | null][]): StickPair[] =>
  pairs.map(([finger, sensor, hoursWorn = null]) => ({ finger, sensor, hoursWorn, zone: 'A' }) as unknown as StickPair);

const stick = (minute: number, amount?: number, unit?: string, day = 0): NoteOn => ({
  day,
  minute,
  kind: 'fingerstick',
  ...(amount === undefined ? {} : { amount }),
  ...(unit === undefined ? {} : { unit }),
});

function sticksOf(days: DaysOf) {
  const { fingersticks } = measure(timelineOf(days), targetSets.adult);
  if (!fingersticks.ok) throw new Error(fingersticks.why);
  return fingersticks.value;
}

const climb = (minute: number) => 100 + minute / 5;
const valuesOf = (days: Partial<DaysOf>) =>
  sticksOf({ days: 1, value: climb, ...days }).pairs.map(({ finger, sensor }) => [finger, sensor]);

describe('which fingersticks count', () => {
  test('those with an amount above 0 and below 1000, and how many found no reading', () => {
    const notes = [stick(300, 90), stick(400, 0), stick(500), stick(600, 1000), stick(700, 999), stick(900, 90)];
    const found = sticksOf({ days: 1, value: climb, notes, without: [{ from: 880, to: 960 }] });
    expect(found).toMatchObject({ noted: 3, alone: 1 });
    expect(found.pairs.map(({ finger, minute }) => [finger, minute])).toEqual([
      [90, 300],
      [999, 700],
    ]);
  });

  test('one of 0.6 mmol/L, as low as meters go (from memory)', () => {
    expect(valuesOf({ notes: [stick(600, 0.6, 'mmol/L')] })).toEqual([[expect.closeTo(10.809, 3), 220]]);
  });

  test('one without a unit is in the unit of the readings', () => {
    const mmol = { unit: 'mmol/L', value: () => 5.5 } as const;
    const notes = [stick(600, 5), stick(700, 90, 'mg/dL'), stick(800, 5, 'mmol/L')];
    expect(valuesOf({ ...mmol, notes }).map(([finger]) => finger)).toEqual([
      expect.closeTo(90.078, 3),
      90,
      expect.closeTo(90.078, 3),
    ]);
    expect(valuesOf({ notes: [stick(600, 90)] })).toEqual([[90, 220]]);
  });
});

describe('the reading beside it', () => {
  test('of two as near is the earlier', () => {
    expect(valuesOf({ every: 10, notes: [stick(605, 90)] })).toEqual([[90, 220]]);
  });

  test('may be the first of all, or the last', () => {
    expect(valuesOf({ notes: [stick(0, 90), stick(1439, 90)] })).toEqual([
      [90, 100],
      [90, 387],
    ]);
  });

  test('is none at the limit of the sensor, nor a second time one that was taken', () => {
    const value = (minute: number) => (minute < 40 ? ({ native: 400, limit: 1 } as const) : 300);
    const { pairs, noted } = sticksOf({ days: 1, value, notes: [stick(5, 390), stick(600, 290)] });
    expect([pairs.map(({ minute }) => minute), noted]).toEqual([[600], 2]);
    const thrice = [stick(600, 90), stick(600, 91), stick(600, 92), stick(600, 93)];
    const taken = valuesOf({ notes: thrice }).map(([, sensor]) => sensor);
    expect(taken).toEqual([220, 219, 221]);
  });

  test('may lie beyond many that cannot be used', () => {
    const value = (minute: number) => (minute > 595 && minute < 604 ? ({ native: 40, limit: -1 } as const) : 80);
    const one = sticksOf({ days: 1, every: 1, value, notes: [stick(600, 60)] });
    expect(one.pairs.map(({ finger, sensor }) => [finger, sensor])).toEqual([[60, 80]]);
  });

  test('lies five minutes away at most, fifteen where the sensor reads every fifteen', () => {
    const lost = [{ from: 600, to: 615 }];
    const alone = (minute: number) =>
      sticksOf({ days: 1, value: climb, notes: [stick(300, 90), stick(minute, 90)], without: lost }).alone;
    expect([alone(600), alone(601), alone(609), alone(610)]).toEqual([0, 1, 1, 0]);
    expect(valuesOf({ every: 15, notes: [stick(615, 90)], without: [{ from: 615, to: 616 }] })).toHaveLength(1);
    expect(valuesOf({ every: 10, notes: [stick(605, 90), stick(900, 90)] })).toHaveLength(2);
  });

  test('tells how long its sensor had been worn, where that is seen', () => {
    const notes = [stick(600, 90), stick(780, 90, undefined, 5), stick(780, 90, undefined, 7)];
    const without = [{ day: 5, from: 600, to: 720 }];
    expect(sticksOf({ days: 9, value: climb, notes, without }).pairs.map(({ hoursWorn }) => hoursWorn)).toEqual([
      null,
      1,
      49,
    ]);
    // Five minutes before any sensor was read.
    const early = { days: 1, value: climb, without: [{ from: 0, to: 600 }], notes: [stick(595, 90)] };
    expect(sticksOf(early).pairs).toMatchObject([{ hoursWorn: null, sensor: 220 }]);
  });
});

describe('agreement', () => {
  test('within 15 and 20: mg/dL below 100, per cent from there on, the border itself counts (ISO 15197:2013)', () => {
    const within = (finger: number, sensor: number) => {
      const { within15, within20 } = agreement(pairsLike([finger, sensor]));
      return [within15, within20];
    };
    expect(within(80, 95)).toEqual([1, 1]);
    expect(within(80, 96)).toEqual([0, 1]);
    expect(within(80, 60)).toEqual([0, 1]);
    expect(within(80, 59)).toEqual([0, 0]);
    expect(within(99, 114)).toEqual([1, 1]);
    expect(within(100, 115)).toEqual([1, 1]);
    expect(within(100.5, 115.55)).toEqual([1, 1]);
    expect(within(300, 345)).toEqual([1, 1]);
    expect(within(300, 346)).toEqual([0, 1]);
    expect(within(300, 361)).toEqual([0, 0]);
    // 115.575 less 100.5 is no exact number for a computer.
    expect(within(100.5, 115.575)).toEqual([1, 1]);
    expect(within(100.5, 115.5755)).toEqual([0, 1]);
  });

  test('the bias is of sensor less fingerstick, above and below', () => {
    const { bias, relativeBias, mad, mard } = agreement(pairsLike([100, 120], [200, 180], [50, 80]));
    expect([bias, mad]).toEqual([10, 70 / 3]);
    expect(relativeBias).toBeCloseTo((0.2 - 0.1 + 0.6) / 3, 9);
    expect(mard).toBeCloseTo(0.3, 9);
  });

  test('zones are counted', () => {
    const zones = [...'AABAC'].map((zone) => ({ ...pairsLike([100, 100])[0]!, zone: zone as 'A' }));
    expect(agreement(zones).zones).toEqual({ A: 3, B: 1, C: 1, D: 0, E: 0 });
  });

  test('after the first 24 hours of each sensor', () => {
    const later = (...pairs: Parameters<typeof pairsLike>) => agreement(pairsLike(...pairs)).afterFirstDay;
    expect(later([100, 150, 3], [100, 110, 24], [100, 130, 40], [100, 120, null])).toEqual({
      pairs: 3,
      mard: expect.closeTo(0.2, 9),
    });
    expect(later([100, 150, 3], [100, 110, 23.9])).toBeNull();
    expect(later([100, 150, null], [100, 110, null])).toBeNull();
  });
});

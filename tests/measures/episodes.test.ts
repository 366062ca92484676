import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { Episodes } from '../../src/model/measures.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';
import { many, runOf, type Slot } from './runs.ts';

function found(timeline: Timeline, side: 'lows' | 'highs', set: keyof typeof targetSets = 'adult'): Episodes {
  const measured = measure(timeline, targetSets[set])[side];
  if (!measured.ok) throw new Error(measured.why);
  return measured.value;
}

interface Case {
  what: string;
  slots: Slot[];
  step?: number;
  /** Minutes of each low. */
  minutes: number[];
  level2?: number;
}

/**
 * Danne 2017, Diabetes Care 40:1631-1640: 15 minutes below to begin (read in its table 1), 15 minutes back to end
 * (from memory). The first eight are worked from the definition outside this program.
 */
const LOWS: Case[] = [
  { what: 'one low', slots: [80, 69, 68, 67, 75, 75, 75, 80], minutes: [15] },
  { what: 'too short', slots: [80, 69, 68, 75, 75, 75, 80], minutes: [] },
  { what: 'a short recovery counts in', slots: [60, 60, 60, 72, 72, 60, 60, 60, 75, 75, 75], minutes: [40] },
  { what: 'a long recovery parts two', slots: [60, 60, 60, 75, 75, 75, 60, 60, 60, 75, 75, 75], minutes: [15, 15] },
  { what: 'level 2', slots: [65, 50, 50, 50, 65, 65, 75, 75, 75], minutes: [30], level2: 1 },
  { what: 'level 2 too short', slots: [65, 50, 50, 65, 65, 75, 75, 75], minutes: [25] },
  { what: 'at the limit is not below', slots: [80, 70, 70, 70, 70, 80], minutes: [] },
  { what: 'two hours', slots: [...many(65, 24), 80, 80, 80], minutes: [120] },
  { what: 'one 15-minute reading stands for 15 minutes', slots: [80, 80, 69, 80, 80], step: 15, minutes: [15] },
  { what: 'five 3-minute readings', slots: [80, ...many(69, 5), ...many(80, 6)], step: 3, minutes: [15] },
  { what: 'four 3-minute readings', slots: [80, ...many(69, 4), ...many(80, 6)], step: 3, minutes: [] },
  {
    what: 'fifteen 1-minute readings',
    slots: [...many(80, 20), ...many(69, 15), ...many(80, 20)],
    step: 1,
    minutes: [15],
  },
  {
    what: 'fourteen 1-minute readings',
    slots: [...many(80, 20), ...many(69, 14), ...many(80, 20)],
    step: 1,
    minutes: [],
  },
];

describe('lows', () => {
  test.each(LOWS)('$what', ({ slots, step = 5, minutes, level2 = 0 }) => {
    const lows = found(runOf(slots, { step }), 'lows');
    expect(lows.list.map((low) => low.minutes)).toEqual(minutes);
    expect(lows.level2).toBe(level2);
  });

  test('in mmol/L on its own limits', () => {
    const lows = found(runOf([5, 3.9, 3.9, 3.9, 3.8, 3.8, 3.8, 5, 5, 5], { unit: 'mmol/L' }), 'lows');
    expect(lows.list.map((low) => low.minutes)).toEqual([15]);
  });

  test('in pregnancy below 63', () => {
    const slots = [80, ...many(65, 6), 80, 80, 80, 62, 62, 62, 80, 80, 80];
    expect(found(runOf(slots), 'lows', 'pregnancy-type-1').list.map((low) => low.minutes)).toEqual([15]);
  });

  test('tell where, how deep and when', () => {
    const [low] = found(runOf([...many(100, 12), 66, 60, 52, 60, 66, ...many(100, 12)], { from: 300 }), 'lows').list;
    expect(low).toMatchObject({
      date: '2026-03-02',
      startMinute: 360,
      endMinute: 385,
      minutes: 25,
      extreme: 52,
      extremeLimit: 0,
      level: 1,
      outerMinutes: 5,
      night: false,
      cut: { start: false, end: false },
    });
    expect(low!.extremeAt - low!.start).toBe(10 * 60000);
  });

  test('a start before 06:00 makes a night low', () => {
    const lows = found(runOf([...many(100, 11), ...many(60, 12), ...many(100, 12)], { from: 300 }), 'lows');
    expect([lows.list[0]!.startMinute, lows.list[0]!.night, lows.night]).toEqual([355, true, 1]);
  });

  test('the sensor limit is the depth, and said to be one', () => {
    const slots: Slot[] = [100, 100, 45, { native: 40, limit: -1 }, 40, 45, 100, 100, 100];
    expect(found(runOf(slots), 'lows').list[0]).toMatchObject({ extreme: 40, extremeLimit: -1, level: 2 });
  });

  test('an unknown limit is at least as deep as anything the sensor did report', () => {
    const low = { native: Number.NaN, limit: -1 } as const;
    const slots: Slot[] = [100, 100, 48, low, low, 48, 100, 100, 100];
    expect(found(runOf(slots), 'lows').list[0]).toMatchObject({ extreme: 48, extremeLimit: -1, level: 2 });
  });
});

/** No source states a rule for missing readings: ours is a pause of up to 20 minutes or two intervals. */
describe('pauses', () => {
  test('of 20 minutes keep the state', () => {
    const [low, ...more] = found(runOf([80, 60, 60, 60, null, null, null, 60, 60, 60, 80, 80, 80]), 'lows').list;
    expect(more).toEqual([]);
    expect(low).toMatchObject({ minutes: 45, cut: { start: false, end: false } });
  });

  test('of 25 minutes cut: the low ends with its last reading, and nothing is made up', () => {
    const slots = [80, 60, 60, 60, null, null, null, null, 60, 60, 60, 60, 80, 80, 80];
    const lows = found(runOf(slots), 'lows').list;
    expect(lows.map((low) => [low.minutes, low.cut])).toEqual([
      [15, { start: false, end: true }],
      [20, { start: true, end: false }],
    ]);
  });

  test('short pieces on both sides of a pause make no low', () => {
    expect(found(runOf([80, 60, 60, null, null, null, null, 60, 60, 80, 80, 80]), 'lows').list).toEqual([]);
  });

  test('the edges of the readings cut as well', () => {
    const lows = found(runOf([60, 60, 60, 80, 80, 80, 60, 60, 60]), 'lows').list;
    expect(lows.map((low) => low.cut)).toEqual([
      { start: true, end: false },
      { start: false, end: true },
    ]);
  });
});

describe('highs', () => {
  test('mirror lows: above 180, level 2 above 250', () => {
    const highs = found(runOf([180, 181, 251, 251, 251, 190, 180, 180, 180]), 'highs');
    expect(highs.list).toMatchObject([{ side: 'high', minutes: 25, level: 2, extreme: 251, outerMinutes: 15 }]);
  });

  test('in pregnancy have no second level', () => {
    const highs = found(runOf([100, ...many(300, 12), 100, 100, 100]), 'highs', 'pregnancy-type-1');
    expect(highs.list).toMatchObject([{ minutes: 60, level: 1, outerMinutes: 0, extreme: 300 }]);
    expect(highs.level2).toBe(0);
  });
});

describe('per week', () => {
  const lowAtNoon = (every: number) =>
    timelineOf({ value: (minute, day) => (day % every === 0 && minute >= 720 && minute < 750 ? 60 : 110) });

  test('of readings, with an interval from 10 full days on', () => {
    const { perWeek } = found(lowAtNoon(2), 'lows');
    expect(perWeek.value).toBeCloseTo(3.5, 9);
    expect(perWeek.low!).toBeGreaterThan(1);
    expect(perWeek.low!).toBeLessThan(3.5);
    expect(perWeek.high!).toBeGreaterThan(3.5);
    expect(perWeek).toMatchObject({ level: 0.95, days: 14, method: 'whole-day-resampling' });
  });

  test('none seen in two weeks still allows for 1.84 a week (Garwood 1936: 3.69 in all)', () => {
    const { level2PerWeek } = found(lowAtNoon(2), 'lows');
    expect(level2PerWeek).toMatchObject({ value: 0, low: 0, method: 'exact-poisson' });
    expect(level2PerWeek.high).toBeCloseTo(1.844, 3);
  });

  test('too few days give no interval', () => {
    const { perWeek, level2PerWeek } = found(timelineOf({ days: 9, value: () => 60 }), 'lows');
    expect([perWeek.low, perWeek.high, level2PerWeek.low, level2PerWeek.high]).toEqual([null, null, null, null]);
  });
});

test('an episode names every day it has readings on, with its minutes there and those beyond the outer limit', () => {
  // A high from 22:00 on day 1 to 03:00 on day 3, above 250 from midnight on: a whole day in between.
  const value = (minute: number, day: number): number => {
    const at = day * 1440 + minute;
    return at < 1440 + 1320 || at >= 3 * 1440 + 180 ? 120 : at < 2 * 1440 ? 220 : 300;
  };
  const [high] = found(timelineOf({ days: 5, value }), 'highs').list;
  expect(high!.days).toEqual([
    { date: '2026-03-03', fromMinute: 1320, toMinute: 1440, outerMinutes: 0 },
    { date: '2026-03-04', fromMinute: 0, toMinute: 1440, outerMinutes: 1440 },
    { date: '2026-03-05', fromMinute: 0, toMinute: 180, outerMinutes: 180 },
  ]);
  expect(high!.outerMinutes).toBe(1620);
});

test('a low whose last reading ends at midnight touches no second day', () => {
  const value = (minute: number, day: number) => (day === 1 && minute >= 1400 ? 60 : 120);
  const [low] = found(timelineOf({ days: 3, value }), 'lows').list;
  expect(low!.days).toEqual([{ date: '2026-03-03', fromMinute: 1400, toMinute: 1440, outerMinutes: 0 }]);
});

import { describe, expect, test } from 'vitest';
import { lastsLong } from '../../src/measures/course.ts';
import { measure } from '../../src/measures/index.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { MINUTE_MS } from '../../src/time/calendar.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';
import { many, runOf, type Slot } from './runs.ts';

/** Places where the smallest slip in the code would hide a low, or tell more than was seen. */

const adult = (timeline: Timeline) => measure(timeline, targetSets.adult);
const lowsOf = (slots: readonly Slot[], from = 0) => measuredValue(adult(runOf(slots, { from })).lows);

describe('lows', () => {
  test('fifteen minutes below 54 right before the recovery are level 2, at the end of the readings too', () => {
    const deep = [100, 60, 52, 52, 52];
    for (const slots of [[...deep, 100, 100, 100], deep]) {
      const { list, level2 } = lowsOf(slots);
      expect([list[0]!.level, list[0]!.outerMinutes, level2]).toEqual([2, 15, 1]);
    }
  });

  test('two short stretches below 54 make no level 2', () => {
    const [low] = lowsOf([100, 52, 52, 60, 52, 52, 100, 100, 100]).list;
    expect([low!.level, low!.outerMinutes]).toEqual([1, 20]);
  });

  test.each([
    [14.5, true],
    [14.49, false],
  ])('stretches of %d minutes are as good as fifteen: %s', (minutes, long) => {
    expect(lastsLong(minutes)).toBe(long);
  });

  test('the deepest may be the last before the recovery', () => {
    expect(lowsOf([100, 66, 62, 58, 100, 100, 100]).list[0]).toMatchObject({ extreme: 58 });
  });

  test('a value at the limit of the sensor is only deeper than the same value, never than a lower one', () => {
    const bound = { native: 50, limit: -1 } as const;
    const extreme = (slots: Slot[]) => {
      const [low] = lowsOf([100, ...slots, 100, 100, 100]).list;
      return [low!.extreme, low!.extremeLimit, (low!.extremeAt - low!.start) / MINUTE_MS];
    };
    expect(extreme([48, 60, bound, 60])).toEqual([48, 0, 0]);
    expect(extreme([bound, 60, 50, 60])).toEqual([50, -1, 0]);
    expect(extreme([50, 60, bound, bound])).toEqual([50, -1, 10]);
  });

  test('nights are counted apart from days, and level 2 apart from level 1', () => {
    const day = (value: number): Slot[] => [...many(100, 12), ...many(value, 6), ...many(100, 270)];
    const evening = [...many(100, 240), ...many(65, 6), ...many(100, 42)];
    const slots = [...day(65), ...day(50), ...evening, ...Array.from({ length: 11 }, () => many(100, 288)).flat()];
    const { list, night, level2, perWeek, level2PerWeek } = lowsOf(slots);
    expect([list.length, night, level2]).toEqual([3, 2, 1]);
    expect(perWeek.value).toBeCloseTo(1.5, 9);
    expect(level2PerWeek.value).toBeCloseTo(0.5, 9);
  });

  test('one cut by the end of the readings ends an interval after its last', () => {
    const [low] = lowsOf([100, 60, 60, 60], 600).list;
    expect([low!.startMinute, low!.endMinute, low!.minutes]).toEqual([605, 620, 15]);
  });
});

describe('highs beyond an unknown limit', () => {
  test('are at least as high as anything the sensor did report', () => {
    const above = { native: Number.NaN, limit: 1 } as const;
    const { highs } = adult(runOf([100, 300, 380, above, above, 300, 100, 100, 100]));
    expect(measuredValue(highs).list[0]).toMatchObject({ extreme: 380, extremeLimit: 1, level: 2 });
  });

  test('lie above the outer limit where nothing else does', () => {
    const above = { native: Number.NaN, limit: 1 } as const;
    const { highs, timeInBands } = adult(runOf([100, above, above, above, 100, 100, 100]));
    expect(measuredValue(highs).list[0]).toMatchObject({ extreme: 250, level: 2 });
    expect(measuredValue(timeInBands).minutes).toMatchObject({ 'very-low': 0, 'very-high': 15 });
  });
});

describe('nights', () => {
  const nightOf = (days: DaysOf, index = 1) => measuredValue(adult(timelineOf(days)).nights)[index]!;

  test('exactly 70 % seen is enough to say "none seen", a reading less is not', () => {
    const seen = (until: number): DaysOf => ({
      days: 2,
      every: 3,
      value: (minute) => (minute >= until && minute < 360 ? null : 110),
    });
    expect([nightOf(seen(252)).share, nightOf(seen(252)).state]).toEqual([0.7, 'none-seen']);
    expect(nightOf(seen(249)).state).toBe('unknown');
  });

  test('a night above the range of the sensor has its lowest where a number was shown', () => {
    const above = { native: Number.NaN, limit: 1 } as const;
    const value = (minute: number) => (minute === 60 ? 395 : above);
    expect(nightOf({ days: 2, value })).toMatchObject({ lowest: 395, lowestLimit: 0, lowestMinute: 60 });
  });

  test('the longest low is one of that night, not of the day before or after', () => {
    const low = (minute: number, day: number) =>
      (day === 0 && minute >= 1200 && minute < 1320) || (day === 1 && minute >= 30 && minute < 60) || minute >= 1400
        ? 60
        : 110;
    const night = nightOf({ days: 2, value: (minute, day) => (day === 1 && minute >= 700 ? 60 : low(minute, day)) });
    // From 23:20 the evening before until midnight and no further: 00:00 is back in range.
    expect(night).toMatchObject({ longestLow: 30, lowMinutes: 30 });
  });

  test('a low that ends with the first reading of the night counts, one that begins with its last as well', () => {
    const value = (minute: number, day: number) =>
      (day === 0 && minute >= 1380) || (day === 1 && minute === 0) || (day === 1 && minute >= 355 && minute < 380)
        ? 60
        : 110;
    expect(nightOf({ days: 2, value })).toMatchObject({ longestLow: 65, lowMinutes: 10 });
    const late = (minute: number) => (minute >= 355 && minute < 400 ? 60 : 110);
    expect(nightOf({ days: 2, value: late })).toMatchObject({ longestLow: 45, lowMinutes: 5 });
  });
});

describe('coverage', () => {
  test('hours of each day', () => {
    const { coverage } = adult(
      timelineOf({ days: 2, value: (minute, day) => (day === 1 && minute >= 360 ? null : 100) }),
    );
    expect(measuredValue(coverage).byDay.map(({ share, hours }) => [share, hours])).toEqual([
      [1, 24],
      [0.25, 6],
    ]);
  });

  test('days without readings count in no mean and no interval', () => {
    const { mean } = adult(timelineOf({ days: 14, value: (_, day) => (day % 7 === 3 ? null : 100 + day) }));
    expect(measuredValue(mean).mgdl).toMatchObject({ days: 12, value: expect.closeTo(106.5, 9) });
    expect(measuredValue(mean).mgdl.low).toBeGreaterThan(100);
  });
});

describe('what a count of none allows for', () => {
  const flat = (full: number): Timeline =>
    timelineOf({ days: 14, value: (minute, day) => (day < full || minute < 600 ? 120 : null) });

  test.each([
    [10, 'exact-poisson', 'none-seen'],
    [9, 'whole-day-resampling', 'whole-day-resampling'],
  ])('is said from ten full days on: %d', (full, lows, bands) => {
    const measures = adult(flat(full));
    expect(measuredValue(measures.lows).perWeek.method).toBe(lows);
    expect(measuredValue(measures.timeInBands).exclusive['very-low'].method).toBe(bands);
  });
});

test('nothing but readings beyond an unknown limit gives no GMI', () => {
  const above = { native: Number.NaN, limit: 1 } as const;
  const { gmi } = adult(timelineOf({ days: 4, value: () => above }));
  expect(gmi).toEqual({ ok: false, why: 'bound-unknown' });
});

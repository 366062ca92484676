import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

/** Four hours on a two-hour grid, 70 % seen, 70 % in range without a low: ours. */
function windowsOf(days: DaysOf) {
  const { windows } = measure(timelineOf(days), targetSets.adult);
  if (!windows.ok) throw new Error(windows.why);
  return windows.value;
}

const inside = (minute: number, from: number) => minute >= from && minute < from + 240;

describe('a window', () => {
  test('tells the shares of its own minutes, very low and very high ones too', () => {
    const value = (minute: number) =>
      minute < 12 ? 50 : minute < 24 ? 65 : minute < 48 ? 200 : minute < 60 ? 300 : 120;
    const [first, second] = windowsOf({ days: 7, every: 3, value }).all;
    expect(first).toMatchObject({ low: 0.1, high: 0.15, inRange: 0.75, days: 7, goodDays: [] });
    expect(second).toMatchObject({ fromMinute: 120, low: 0, high: 0, inRange: 1 });
  });

  test('counts a day of which 70 % was seen, and as good one with 70 % of that in range', () => {
    const seen = windowsOf({ days: 8, every: 3, value: (minute, day) => (minute < [72, 75][day]! ? null : 100) });
    expect(seen.all[0]!.days).toBe(7);
    const good = windowsOf({ days: 8, every: 3, value: (minute, day) => (minute < [72, 75][day]! ? 200 : 100) });
    expect(good.all[0]!.goodDays).toHaveLength(7);
    expect(good.all[0]!.goodDays).toContain('2026-03-02');
  });

  test('never seen has nothing in it', () => {
    const found = windowsOf({ days: 7, value: (minute) => (inside(minute, 0) ? null : 100) });
    expect(found.all[0]).toMatchObject({ days: 0, inRange: 0, low: 0, high: 0, goodDays: [] });
    expect(found.best.fromMinute).toBe(240);
  });
});

describe('the best window', () => {
  test('has the largest share of good days among those seen, not the largest number', () => {
    const value = (minute: number, day: number) => {
      if (inside(minute, 240)) return day < 7 ? 100 : null;
      return inside(minute, 960) ? (day < 12 ? 100 : 200) : 200;
    };
    const { best } = windowsOf({ days: 14, value });
    expect([best.fromMinute, best.days, best.goodDays.length]).toEqual([240, 7, 7]);
  });

  test('has the largest share of good days, though another has more time in range', () => {
    const value = (minute: number, day: number) => {
      if (inside(minute, 240)) return minute < 300 ? 200 : 100;
      return inside(minute, 960) ? (day === 3 && minute === 1000 ? 69 : 100) : 200;
    };
    expect(windowsOf({ days: 7, value }).best).toMatchObject({ fromMinute: 240, inRange: 0.75 });
  });

  test('with as many good days is the one with more time in range; of equals the first', () => {
    const value = (minute: number) => {
      if (inside(minute, 240)) return minute < 300 ? 200 : 100;
      return inside(minute, 960) ? (minute < 990 ? 200 : 100) : 200;
    };
    expect(windowsOf({ days: 7, value }).best.fromMinute).toBe(960);
    expect(windowsOf({ days: 7, value: () => 100 }).best.fromMinute).toBe(0);
  });
});

describe('the hardest window', () => {
  test('has least time in range; between equals more time low; of equals the first', () => {
    const half = (low: number) => (minute: number) => {
      if (inside(minute, 240)) return minute % 10 === 0 ? 100 : 200;
      return inside(minute, 960) ? (minute % 10 === 0 ? 100 : low) : 100;
    };
    expect(windowsOf({ days: 7, value: half(60) }).hardest).toMatchObject({ fromMinute: 960, low: 0.5 });
    expect(windowsOf({ days: 7, value: half(200) }).hardest).toMatchObject({ fromMinute: 240, low: 0 });
    const lessLow = (minute: number) => (inside(minute, 480) ? (minute % 20 === 0 ? 60 : 200) : half(60)(minute));
    expect(windowsOf({ days: 7, value: lessLow }).hardest.fromMinute).toBe(480);
    const noLow = (minute: number) => (inside(minute, 480) ? (minute % 20 === 0 ? 100 : 200) : half(60)(minute));
    expect(windowsOf({ days: 7, value: noLow }).hardest).toMatchObject({ fromMinute: 480, inRange: 0.25, low: 0 });
  });
});

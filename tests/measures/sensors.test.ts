import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { sensors } from '../../src/measures/sensors.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

/** What is taken for a change of sensor is ours; from memory, lows are told wrongly most often on a sensor's first day. */
function sensorsOf(days: DaysOf) {
  const { sensors } = measure(timelineOf(days), targetSets.adult);
  if (!sensors.ok) throw new Error(sensors.why);
  return sensors.value;
}

/** Sensors change at noon of the sixth and of the twelfth of the days built, two hours without readings each. */
const without = [
  { day: 5, from: 600, to: 720 },
  { day: 11, from: 600, to: 720 },
];
const hoursIn = (minute: number, day: number) => (day - 5) * 24 + minute / 60 - 12;

describe('sensors worn', () => {
  test('begin on their day, after their pause; the first has no seen start', () => {
    const { worn } = sensorsOf({ days: 13, value: () => 100, without });
    expect(
      worn.map(({ date, begun, pauseMinutes, readings, interval }) => [date, begun, pauseMinutes, readings, interval]),
    ).toEqual([
      ['2026-03-02', false, null, 1560, 5],
      ['2026-03-07', true, 125, 1704, 5],
      ['2026-03-13', true, 125, 432, 5],
    ]);
  });

  test('what is missing before the first reading is no pause for a change', () => {
    const { worn, byDay } = sensorsOf({ days: 4, value: () => 100, without: [{ day: 0, from: 0, to: 720 }] });
    expect(worn.map(({ begun, pauseMinutes }) => [begun, pauseMinutes])).toEqual([[false, null]]);
    expect(byDay).toEqual([]);
  });

  test('one that begins with a day belongs to that day', () => {
    const { worn } = sensorsOf({ days: 9, value: () => 100, without: [{ day: 5, from: 1200, to: 1440 }] });
    expect(worn.map(({ date }) => date)).toEqual(['2026-03-02', '2026-03-08']);
  });
});

describe('days of wear', () => {
  test('are of 24 hours, as is printed beside them', () => {
    expect(sensors.definition).toEqual({ firstDayHours: 24 });
  });

  test('of one sensor: lows, range and mean of each 24 hours from its start', () => {
    // A quarter low on its first day, half of the second above range, the third all 70 and 180, the fourth very low.
    const value = (minute: number, day: number) => {
      const hours = hoursIn(minute, day);
      if (hours < 0) return 250;
      if (hours < 24) return hours < 6 ? 60 : 100;
      if (hours < 48) return hours < 36 ? 200 : 120;
      return hours < 72 ? (minute % 10 === 0 ? 70 : 180) : 50;
    };
    const { byDay } = sensorsOf({ days: 9, value, without: [without[0]!] });
    expect(byDay).toEqual([
      { day: 1, sensors: 1, share: 1, mean: 90, low: 0.25, inRange: 0.75 },
      { day: 2, sensors: 1, share: 1, mean: 160, low: 0, inRange: 0.5 },
      { day: 3, sensors: 1, share: 1, mean: 125, low: 0, inRange: 1 },
      { day: 4, sensors: 1, share: 1, mean: 50, low: 1, inRange: 0 },
    ]);
  });

  test('of two sensors are put together, and none of a sensor whose start is not seen', () => {
    const value = (minute: number, day: number) => {
      const hours = hoursIn(minute, day);
      return hours < 0 ? 50 : hours < 142 ? 100 : 160;
    };
    const { byDay } = sensorsOf({ days: 13, value, without });
    expect(byDay.map(({ day, sensors, mean }) => [day, sensors, mean])).toEqual([
      [1, 2, 130],
      [2, 2, 120],
      [3, 1, 100],
      [4, 1, 100],
      [5, 1, 100],
      [6, 1, 100],
    ]);
  });

  test('share: of 24 hours on full days, of what it was worn on the last', () => {
    const holes = [
      { day: 6, from: 900, to: 1260 },
      { day: 8, from: 1080, to: 1260 },
    ];
    const { byDay } = sensorsOf({ days: 9, value: () => 100, without: [without[0]!, ...holes] });
    expect(byDay.map(({ share }) => share)).toEqual([1, 0.75, 1, 0.75]);
  });

  test('a day without readings has no mean and no lows; one beyond an unknown limit is low all the same', () => {
    const gone = sensorsOf({
      days: 9,
      value: (_, day) => (day === 7 ? null : 100),
      without: [without[0]!, { day: 6, from: 720, to: 1440 }, { day: 8, from: 0, to: 60 }],
    });
    expect(gone.byDay[1]).toMatchObject({ share: 0, mean: null, low: 0, inRange: 0 });
    const unknown = sensorsOf({
      days: 9,
      value: (minute, day) => (day === 5 && minute >= 720 ? { native: Number.NaN, limit: -1 } : 100),
      without: [without[0]!],
    });
    expect(unknown.byDay[0]).toMatchObject({ mean: 100, low: 0.5, inRange: 0.5 });
    const nothing = sensorsOf({
      days: 9,
      value: (_, day) => (day >= 5 ? { native: Number.NaN, limit: -1 } : 100),
      without: [without[0]!],
    });
    expect(nothing.byDay[0]).toMatchObject({ mean: null, low: 1, inRange: 0 });
  });

  test('a sensor worn for one reading has a day of wear, all of it seen', () => {
    const { byDay } = sensorsOf({
      days: 6,
      value: (minute, day) => (day === 5 && minute > 720 ? null : 100),
      without: [without[0]!],
    });
    expect(byDay).toEqual([{ day: 1, sensors: 1, share: 1, mean: 100, low: 0, inRange: 1 }]);
  });
});

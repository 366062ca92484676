import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

/** All limits here are ours: no published threshold for a steady night was found. */
const of = (days: DaysOf) => measure(timelineOf(days), targetSets.adult).overnight;

function nightsOf(days: DaysOf) {
  const found = of(days);
  if (!found.ok) throw new Error(found.why);
  return found.value;
}

describe('from midnight to six', () => {
  test('the first and the last half hour, and nothing beside them, are start and end', () => {
    const value = (minute: number) => {
      if (minute < 30) return minute < 15 ? 90 : 110;
      if (minute === 30) return 130;
      if (minute < 325) return 120;
      if (minute === 325) return 80;
      return minute < 360 ? 115 : 300;
    };
    const { nights } = nightsOf({ days: 5, value });
    expect(nights[0]).toEqual({ date: '2026-03-02', start: 100, end: 115, change: 15, range: 50 });
  });

  test('a step counts for the time it stands for', () => {
    const value = (minute: number, day: number) => (minute < 30 && minute % 10 === 5 && day > 2 ? null : 100 + minute);
    const { nights } = nightsOf({ days: 9, value });
    expect([nights[0]!.start, nights[5]!.start]).toEqual([112.5, 110]);
  });

  test('from 30 up to 30 down, ranging over 50, is steady; a little more of either is not', () => {
    // By day: change from start to end, and one reading between that far from the start.
    const nights: [change: number, peak: number][] = [
      [30, 50],
      [-30, 20],
      [31, 20],
      [-31, 10],
      [0, 51],
      [5, 50],
      [40, 60],
    ];
    const value = (minute: number, day: number) =>
      minute === 200 ? 150 + nights[day]![1] : minute < 330 ? 150 : 150 + nights[day]![0];
    const found = nightsOf({ days: 7, value });
    expect(found.nights.map(({ change, range }) => [change, range])).toEqual([
      [30, 50],
      [-30, 50],
      [31, 31],
      [-31, 41],
      [0, 51],
      [5, 50],
      [40, 60],
    ]);
    expect([found.steady, found.median]).toEqual([3, 5]);
  });

  test('five nights are enough, four are not', () => {
    expect(nightsOf({ days: 5, value: () => 110 }).nights).toHaveLength(5);
    expect(of({ days: 4, value: () => 110 })).toEqual({ ok: false, why: 'too-few-nights' });
  });

  test('a night seen for less than 70 %, or without its start or end, is none', () => {
    const lost: [from: number, to: number][] = [
      [0, 0],
      [60, 168],
      [60, 171],
      [0, 30],
      [330, 360],
      [0, 27],
      [333, 360],
      [0, 0],
    ];
    const value = (minute: number, day: number) => (minute >= lost[day]![0] && minute < lost[day]![1] ? null : 110);
    const dates = nightsOf({ days: 8, every: 3, value }).nights.map(({ date }) => date.slice(-2));
    expect(dates).toEqual(['02', '03', '07', '08', '09']);
  });

  test('a night beyond the range of the sensor lies where the sensor last told a value', () => {
    const value = (minute: number) =>
      minute >= 100 && minute < 200 ? ({ native: 400, limit: 1 } as const) : minute < 360 ? 380 : 120;
    expect(nightsOf({ days: 5, value }).nights[0]).toMatchObject({ start: 380, end: 380, range: 20 });
  });
});

import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { Coverage } from '../../src/model/measures.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { addDays, MINUTE_MS, midnightOf } from '../../src/time/calendar.ts';
import { built, fileOf, type Row, timelineOf } from '../support/timeline.ts';

/** Which hour of the clock is longer or shorter on the day of a change: it decides how much of a night was seen. */

function coverageOf(timeline: Timeline): Coverage {
  const { coverage } = measure(timeline, targetSets.adult);
  if (!coverage.ok) throw new Error(coverage.why);
  return coverage.value;
}

describe('a change of clocks told by offsets alone', () => {
  /**
   * Readings every five minutes of real time whose clock moves by an hour once it has shown `minute` of the first day,
   * but for those lost, in minutes since midnight.
   */
  function day(date: string, minute: number, by: 60 | -60, lost: readonly [number, number], days = 1): Timeline {
    const midnight = midnightOf(date);
    const rows: Row[] = [];
    for (let at = 0; at < days * 1440 - by; at += 5) {
      const offset = at < minute ? 120 : 120 + by;
      if (at >= lost[0] && at < lost[1]) continue;
      rows.push({ wall: midnight + at * MINUTE_MS + (offset - 120) * MINUTE_MS, native: 100, offset });
    }
    return built([fileOf(rows)], { period: { from: date, to: addDays(date, days - 1) } });
  }

  const NONE = [0, 0] as const;
  test.each([
    ['back at three', '2024-10-27', 180, -60, NONE, 25, 7],
    ['forward at two', '2024-03-31', 120, 60, NONE, 23, 5],
    ['back at noon, when a traveller lands', '2024-05-05', 720, -60, NONE, 25, 6],
    ['forward at noon', '2024-05-05', 720, 60, NONE, 23, 6],
    ['back at three, not seen: taken for two', '2024-10-27', 180, -60, [60, 400], 25, 7],
    ['back in the evening, not seen: the night keeps its length', '2024-05-05', 1200, -60, [1100, 1300], 25, 6],
  ] as const)('%s', (_, date, minute, by, lost, hours, night) => {
    const coverage = coverageOf(day(date, minute, by, lost));
    expect([coverage.ofHours, coverage.night.ofHours]).toEqual([hours, night]);
    if (lost !== NONE) return;
    expect(coverage.night.share).toBeCloseTo(1, 9);
    const never = by === 60 ? minute / 60 : -1;
    coverage.byHour.forEach((share, hour) => {
      expect(share, `${hour}`).toBeCloseTo(hour === never ? 0 : 1, 9);
    });
  });

  test.each([
    ['from one to twenty to six, shown the second time', [60, 400], [1, 0, 0, 0, 0, 1 / 3, 1]],
    ['from two to three, shown the second time', [120, 240], [1, 1, 0, 1, 1, 1, 1]],
  ] as const)('back at three, readings lost %s: two came twice', (_, lost, byHour) => {
    const coverage = coverageOf(day('2024-10-27', 180, -60, lost));
    byHour.forEach((share, hour) => {
      expect(coverage.byHour[hour], `${hour}`).toBeCloseTo(share, 9);
    });
  });

  test('not seen until the next day: the night that was seen keeps its length', () => {
    const coverage = coverageOf(day('2024-05-05', 1200, -60, [1100, 1500], 2));
    expect([coverage.ofHours, coverage.night.ofHours, coverage.night.share]).toEqual([49, 12, 1]);
  });
});

/** Hours of change from the zone database: London at one, Vienna at two, Beirut at midnight. */
describe('a change of clocks told by a zone', () => {
  test('is known where no reading shows it', () => {
    // London goes back at two summer time: one o'clock comes twice, and half of the first was seen.
    const value = (minute: number) => (minute >= 60 && minute < 360 ? null : 100);
    const { byHour, night } = coverageOf(timelineOf({ from: '2024-10-27', days: 1, zone: 'Europe/London', value }));
    expect(night.ofHours).toBe(7);
    expect(byHour.slice(0, 7)).toEqual([1, 0, 0, 0, 0, 0, 1]);
    const half = (minute: number) => (minute >= 90 && minute < 360 ? null : 100);
    const seen = coverageOf(timelineOf({ from: '2024-10-27', days: 1, zone: 'Europe/London', value: half }));
    expect(seen.byHour.slice(0, 4)).toEqual([1, expect.closeTo(0.25, 2), 0, 0]);
  });

  test('at midnight takes the first hour of the night', () => {
    const value = (minute: number) => (minute < 60 ? null : 100);
    const { night } = coverageOf(timelineOf({ from: '2024-03-31', days: 1, zone: 'Asia/Beirut', value }));
    expect([night.ofHours, night.share]).toEqual([5, 1]);
  });
});

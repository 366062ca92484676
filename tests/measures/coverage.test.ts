import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { Coverage } from '../../src/model/measures.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { HOUR_MS, MINUTE_MS, midnightOf } from '../../src/time/calendar.ts';
import { built, type DaysOf, fileOf, type Row, timelineOf } from '../support/timeline.ts';

function found(timeline: Timeline): Coverage {
  const { coverage } = measure(timeline, targetSets.adult);
  if (!coverage.ok) throw new Error(coverage.why);
  return coverage.value;
}

/** The first readings of a fortnight, as many as given: 70 % of 4032, 1344 and 20160 (Battelino 2019: 14 days, 70 %). */
const firstOf = (readings: number, every: number): DaysOf => ({
  every,
  // Every reading but the last few of each day, so that each day holds its part.
  value: (minute, day) => (minute / every < Math.ceil((readings - day) / 14) ? 100 : null),
});

describe('coverage', () => {
  test.each([
    [5, 4032, 2823],
    [15, 1344, 941],
    [1, 20160, 14112],
  ])('every %i minutes: %i readings in 14 days, enough from %i on', (every, all, least) => {
    const full = found(timelineOf({ every, value: () => 100 }));
    expect(full.share).toBeCloseTo(1, 9);
    expect(full.ofHours).toBe(336);
    expect(all * every).toBe(14 * 1440);
    expect(found(timelineOf(firstOf(least, every))).enough).toBe(true);
    expect(found(timelineOf(firstOf(least - 1, every))).enough).toBe(false);
  });

  test('ten full days of fourteen are 71.4 %, and enough; of thirteen days nothing is', () => {
    const ten = found(timelineOf({ value: (_, day) => (day < 10 ? 100 : null) }));
    expect(ten.share).toBeCloseTo(0.71428571, 6);
    expect(ten).toMatchObject({ enough: true, daysWithReadings: 10, fullDays: 10 });
    expect(found(timelineOf({ days: 13, value: () => 100 })).enough).toBe(false);
  });

  test('72 hours', () => {
    expect(found(timelineOf({ days: 3, value: () => 100 })).reached72h).toBe(true);
    const short = timelineOf({ days: 3, value: () => 100, without: [{ day: 0, from: 0, to: 30 }] });
    expect(found(short).reached72h).toBe(false);
  });

  test('stands for a day of 24 hours: 72 hours, and nights at least half as well seen as the whole (ours)', () => {
    const nightTo = (minutes: number) =>
      found(timelineOf({ days: 4, value: (minute) => (minute < 360 && minute >= minutes ? null : 100) }));
    // By hand: 18 h of day and n of night seen; n / 6 >= (18 + n) / 48 from n = 18 / 7 h = 154.3 minutes on.
    expect([nightTo(0), nightTo(150), nightTo(155), nightTo(360)].map(({ wholeDay }) => wholeDay)).toEqual([
      false,
      false,
      true,
      true,
    ]);
    expect(found(timelineOf({ days: 2, value: () => 100 })).wholeDay).toBe(false);
  });

  test('is told by day, by clock hour and for the night', () => {
    const coverage = found(
      timelineOf({
        days: 4,
        value: () => 100,
        without: [
          { from: 60, to: 180 },
          { day: 2, from: 0, to: 1440 },
        ],
      }),
    );
    expect(coverage.byDay.map(({ share }) => share)).toEqual(
      [22 / 24, 22 / 24, 0, 22 / 24].map((s) => expect.closeTo(s, 9)),
    );
    expect(coverage.byDay[2]).toEqual({ date: '2026-03-04', share: 0, hours: 0 });
    expect(coverage.byHour).toHaveLength(24);
    expect([0, 1, 2, 3].map((hour) => coverage.byHour[hour])).toEqual(
      [0.75, 0, 0, 0.75].map((s) => expect.closeTo(s, 9)),
    );
    expect(coverage.night).toEqual({
      share: expect.closeTo(0.5, 9),
      hours: expect.closeTo(12, 9),
      ofHours: 24,
    });
    expect(coverage.daysWithReadings).toBe(3);
  });

  test('gaps by kind', () => {
    const coverage = found(
      timelineOf({
        days: 12,
        value: () => 100,
        without: [
          { day: 0, from: 0, to: 120 },
          { day: 2, from: 600, to: 660 },
          { day: 9, from: 600, to: 720 },
        ],
      }),
    );
    expect(coverage.missing.edge).toBe(120);
    expect(coverage.missing.hole).toBe(65);
    expect(coverage.missing.change).toBe(125);
  });

  /** Clocks in Vienna went forward at 02:00 on 2024-03-31 and back at 03:00 on 2024-10-27 (EU Directive 2000/84/EC). */
  test.each([
    ['an hour short', '2024-03-30', 71, 17],
    ['an hour long', '2024-10-26', 73, 19],
  ])('the day of a clock change is %s', (_, from, hours, nightHours) => {
    const coverage = found(
      timelineOf({
        from,
        days: 3,
        zone: 'Europe/Vienna',
        value: (minute, day) => (day === 1 && minute >= 120 && minute < 180 ? null : 100),
      }),
    );
    expect([coverage.ofHours, coverage.night.ofHours]).toEqual([hours, nightHours]);
    const missing = hours === 71 ? 0 : 2;
    expect(coverage.hours).toBeCloseTo(hours - missing, 6);
    expect(coverage.byHour[2]).toBeCloseTo(hours === 71 ? 1 : 0.5, 6);
    expect(coverage.byHour[3]).toBeCloseTo(1, 6);
  });

  /** Rules of the IANA time zone database for 2024. */
  test.each([
    ['America/Santiago', '2024-09-08', 0, 0, 60],
    ['Atlantic/Azores', '2024-03-31', 0, 0, 60],
    ['Europe/Lisbon', '2024-03-31', 1, 60, 120],
    ['America/New_York', '2024-03-10', 2, 120, 180],
  ])('%s, %s: hour %i is lost', (zone, from, hour, start, end) => {
    const value = (minute: number) => (minute >= start && minute < end ? null : 100);
    const coverage = found(timelineOf({ from, days: 1, zone, value }));
    expect(coverage.ofHours).toBe(23);
    for (const h of [0, 1, 2, 3, 4].filter((each) => each !== hour))
      expect([h, coverage.byHour[h]]).toEqual([h, expect.closeTo(1, 9)]);
    expect(coverage.byHour[hour]).toBe(0);
  });

  test('an hour that no day of the period held is not seen', () => {
    const value = (minute: number) => (minute >= 120 && minute < 180 ? null : 100);
    const coverage = found(timelineOf({ from: '2024-03-31', days: 1, zone: 'Europe/Vienna', value }));
    expect(coverage.byHour[2]).toBe(0);
    expect(coverage.night.share).toBeCloseTo(1, 9);
  });

  test('without a zone the change is seen in the offsets of the rows', () => {
    const midnight = midnightOf('2024-10-27');
    const rows = Array.from({ length: 300 }, (_, i): Row => {
      const offset = i * 5 < 180 ? 120 : 60;
      return { wall: midnight + i * 5 * MINUTE_MS - (offset === 60 ? HOUR_MS : 0), native: 100, offset };
    });
    const coverage = found(built([fileOf(rows)], { period: { from: '2024-10-27', to: '2024-10-27' } }));
    expect([coverage.ofHours, coverage.night.ofHours]).toEqual([25, 7]);
    for (const share of coverage.byHour) expect(share).toBeCloseTo(1, 9);
  });
});

import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

const all = (days: DaysOf) => measure(timelineOf(days), targetSets.adult);

describe('hour by hour', () => {
  test('shares of each clock hour over all days', () => {
    const hours = measuredValue(
      all({ days: 4, value: (minute, day) => (minute < 60 ? (day === 0 ? 60 : 100) : 200) }).hourly,
    );
    expect(hours).toHaveLength(24);
    expect(hours[0]).toMatchObject({ hour: 0, minutes: 240, days: 4 });
    expect(hours[0]!.shares).toEqual({ 'very-low': 0, low: 0.25, 'in-range': 0.75, high: 0, 'very-high': 0 });
    expect(hours[5]!.shares!.high).toBe(1);
  });

  test('days are counted that have readings in it, whichever they are', () => {
    const hours = measuredValue(
      all({ days: 4, value: (minute, day) => (minute < 60 && day !== 1 && day !== 3 ? null : 100) }).hourly,
    );
    expect([hours[0]!.days, hours[1]!.days]).toEqual([2, 4]);
  });

  test('an hour never seen has no shares', () => {
    const hours = measuredValue(all({ days: 2, value: (minute) => (minute < 60 ? null : 100) }).hourly);
    expect(hours[0]).toEqual({ hour: 0, minutes: 0, days: 0, shares: null });
  });
});

describe('day by day', () => {
  test('mean, ends, minutes and share in range', () => {
    const [first, second, third] = measuredValue(
      all({
        days: 3,
        value: (minute, day) => (day === 1 ? null : day === 0 ? (minute < 360 ? 60 : 160) : minute < 720 ? 190 : null),
      }).daily,
    );
    expect(first).toMatchObject({ date: '2026-03-02', mean: 135, lowest: 60, highest: 160, inRange: 0.75, full: true });
    expect(first!.minutes).toEqual({ 'very-low': 0, low: 360, 'in-range': 1080, high: 0, 'very-high': 0 });
    expect(second).toMatchObject({ share: 0, mean: null, lowest: null, highest: null, inRange: null, full: false });
    expect(third).toMatchObject({ share: 0.5, mean: 190, inRange: 0, full: false });
  });
});

describe('a day', () => {
  const dayOf = (value: DaysOf['value'], every = 5) => measuredValue(all({ days: 2, every, value }).daily)[1]!;

  test('of which 70 % were seen is full', () => {
    expect(dayOf((minute) => (minute < 432 ? null : 100), 3).full).toBe(true);
    expect(dayOf((minute) => (minute < 435 ? null : 100), 3).full).toBe(false);
    const { coverage } = all({ days: 2, every: 3, value: (minute, day) => (minute < 432 + day * 3 ? null : 100) });
    expect(measuredValue(coverage).fullDays).toBe(1);
  });

  test('has its ends where they stand, and says where they lie at a limit of the sensor', () => {
    const value = (minute: number) =>
      minute === 300
        ? ({ native: 60, limit: -1 } as const)
        : minute === 500
          ? ({ native: 200, limit: 1 } as const)
          : minute === 200 || minute === 700
            ? 60
            : minute === 600
              ? 200
              : 120;
    expect(dayOf(value)).toMatchObject({ lowest: 60, highest: 200, limits: { lowest: -1, highest: 1 } });
    expect(dayOf((minute) => 120 + (minute % 7))).toMatchObject({ lowest: 120, highest: 126 });
  });

  test('has the mean of what has a number', () => {
    const unknown = { native: Number.NaN, limit: 1 } as const;
    expect(dayOf((minute) => (minute < 720 ? unknown : 150))).toMatchObject({ mean: 150, inRange: 0.5 });
  });
});

describe('times of day', () => {
  test('eleven windows of four hours', () => {
    const windows = measuredValue(all({ value: () => 100 }).windows);
    expect(windows.all.map(({ fromMinute }) => fromMinute)).toEqual([
      0, 120, 240, 360, 480, 600, 720, 840, 960, 1080, 1200,
    ]);
    for (const { fromMinute, toMinute } of windows.all) expect(toMinute - fromMinute).toBe(240);
  });

  test('best: in range on most days without a low; hardest: least in range', () => {
    const windows = measuredValue(
      all({
        value: (minute, day) => {
          if (minute >= 360 && minute < 600) return 110;
          if (minute >= 1080 && minute < 1320) return day < 10 ? 230 : 150;
          return day % 2 === 0 ? 190 : 120;
        },
      }).windows,
    );
    expect(windows.best).toMatchObject({ fromMinute: 360, toMinute: 600, inRange: 1, low: 0, days: 14 });
    expect(windows.best.goodDays).toHaveLength(14);
    expect(windows.hardest).toMatchObject({ fromMinute: 1080, high: expect.closeTo(10 / 14, 9) });
    expect(windows.hardest.goodDays).toEqual(['2026-03-12', '2026-03-13', '2026-03-14', '2026-03-15']);
  });

  test('one low reading spoils a day, 70 % in range makes one', () => {
    const [, , third] = measuredValue(
      all({ value: (minute, day) => (minute !== 300 ? (minute % 100 < 30 ? 190 : 100) : day === 3 ? 69 : 100) })
        .windows,
    ).all;
    expect(third!.goodDays).not.toContain('2026-03-05');
    expect(third!.goodDays.length).toBeGreaterThanOrEqual(0);
  });

  test('ask for seven days seen to 70 %', () => {
    expect(all({ days: 6, value: () => 100 }).windows).toEqual({ ok: false, why: 'too-few-days' });
    const windows = measuredValue(
      all({ days: 7, value: (minute, day) => (day === 0 && minute >= 240 && minute < 480 ? null : 100) }).windows,
    );
    expect(windows.all.map(({ days }) => days)).toEqual([7, 6, 6, 6, 7, 7, 7, 7, 7, 7, 7]);
  });
});

/** Monnier 2013, Diabetes Care 36:4057-4062: before breakfast minus the lowest of 00:00-06:00, no low in the night. */
describe('rise before breakfast', () => {
  const dawn = (minute: number) =>
    minute < 180 ? 120 : minute < 200 ? 104 : minute < 360 ? 110 : minute < 480 ? 131 : 180;

  test('nadir 104, before breakfast 131: 27', () => {
    const rise = measuredValue(all({ value: dawn }).dawnRise);
    expect(rise).toMatchObject({ median: 27, leftOut: 0 });
    expect(rise.nights[0]).toEqual({ date: '2026-03-02', nadir: 104, nadirMinute: 180, before: 131, rise: 27 });
  });

  test('up to the first meal noted, where there is one', () => {
    const notes = Array.from({ length: 14 }, (_, day) => ({ day, minute: 510, kind: 'meal' as const }));
    expect(measuredValue(all({ value: dawn, notes }).dawnRise).median).toBe(76);
    const early = notes.map((note) => ({ ...note, minute: 330 }));
    expect(measuredValue(all({ value: dawn, notes: early }).dawnRise).median).toBe(6);
  });

  test('nights with a low, an early meal or too few readings are left out', () => {
    const value = (minute: number, day: number) => {
      if (day === 0 && minute === 60) return 65;
      if (day === 1 && minute < 120) return null;
      return dawn(minute);
    };
    const notes = [{ day: 2, minute: 120, kind: 'meal' as const }];
    const rise = measuredValue(all({ value, notes }).dawnRise);
    expect([rise.nights.length, rise.leftOut]).toEqual([11, 3]);
  });

  test('asks for five nights', () => {
    expect(all({ days: 4, value: dawn }).dawnRise).toEqual({ ok: false, why: 'too-few-nights' });
  });
});

/** Acciaroli 2022, J Diabetes Sci Technol 16:677-682: above 180 starting within 120 minutes of a low. */
describe('highs after lows', () => {
  const lowThen = (wait: number, high = 200) => ({
    days: 2,
    value: (minute: number, day: number) => {
      if (day !== 0) return 120;
      if (minute >= 600 && minute < 630) return 60;
      return minute >= 630 + wait && minute < 630 + wait + 60 ? high + (minute % 60 === 40 ? 10 : 0) : 120;
    },
  });

  test.each([
    [30, 1],
    [120, 1],
    [125, 0],
  ])('a high %i minutes after: %i', (wait, count) => {
    const rebounds = measuredValue(all(lowThen(wait)).rebounds);
    expect([rebounds.list.length, rebounds.ofLows]).toEqual([count, 1]);
    if (count > 0) expect(rebounds.list[0]).toMatchObject({ minutesAfter: wait, peak: 210, low: { minutes: 30 } });
  });

  test('exactly 180 is no high', () => {
    expect(measuredValue(all(lowThen(30, 170)).rebounds).list).toEqual([]);
  });

  test('a low after which too little was seen is not among those asked', () => {
    const value = (minute: number, day: number) =>
      day === 0 && minute >= 600 ? (minute < 630 ? 60 : minute < 660 ? 120 : null) : 120;
    expect(measuredValue(all({ days: 2, value }).rebounds)).toEqual({ list: [], ofLows: 0 });
  });

  test('a high belongs to the last low before it', () => {
    const value = (minute: number, day: number) =>
      day === 0 && ((minute >= 600 && minute < 620) || (minute >= 660 && minute < 680))
        ? 60
        : day === 0 && minute >= 720 && minute < 780
          ? 220
          : 120;
    const rebounds = measuredValue(all({ days: 2, value }).rebounds);
    expect([rebounds.list.length, rebounds.ofLows, rebounds.list[0]!.low.startMinute]).toEqual([1, 2, 660]);
  });
});

import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { Night } from '../../src/model/measures.ts';
import { targetSets } from '../../src/targets/index.ts';
import { built, type DaysOf, fileOf, timelineOf } from '../support/timeline.ts';

function night(value: (minute: number) => number | null): Night {
  return found({ days: 2, value: (minute, day) => (day === 0 ? 110 : value(minute)) })[1]!;
}

function found(days: DaysOf): Night[] {
  const { nights } = measure(timelineOf(days), targetSets.adult);
  if (!nights.ok) throw new Error(nights.why);
  return nights.value;
}

const between = (minute: number, from: number, to: number) => minute >= from && minute < to;

const STATES: [string, Night['state'], (minute: number) => number | null][] = [
  ['all seen, nothing low', 'none-seen', () => 110],
  ['exactly 70 % seen', 'none-seen', (minute) => (minute < 252 ? 110 : minute < 360 ? null : 110)],
  ['under 70 % seen', 'unknown', (minute) => (between(minute, 240, 360) ? null : 110)],
  ['nothing seen', 'unknown', (minute) => (minute < 360 ? null : 110)],
  [
    'a low seen, though hardly anything else',
    'low',
    (minute) => (between(minute, 15, 345) ? null : minute < 15 ? 65 : 110),
  ],
  ['one reading below the limit', 'low', (minute) => (minute === 100 ? 69 : 110)],
  ['one reading far below', 'very-low', (minute) => (minute === 100 ? 53 : 110)],
  ['low at six is day', 'none-seen', (minute) => (between(minute, 360, 400) ? 50 : 110)],
];

describe('nights, 00:00 to 06:00 (Danne 2017)', () => {
  test.each(STATES)('%s: %s', (_, state, value) => {
    expect(night(value).state).toBe(state);
  });

  test('the night before the first reading or after the last is no night of the recording; a gap between is', () => {
    const evening = (minute: number, day: number) => ((day === 0 && minute < 1080) || day === 2 ? null : 110);
    expect(found({ days: 4, value: evening }).map(({ outside }) => outside)).toEqual([true, false, false, false]);
    const ended = found({ days: 3, value: (minute, day) => (day === 2 && minute < 1380 ? null : 110) });
    expect(ended.map(({ outside }) => outside)).toEqual([false, false, false]);
  });

  test('one night a day of the period, each by its day', () => {
    const nights = found({ days: 3, value: (_, day) => (day === 1 ? null : 110) });
    expect(nights.map(({ date, state }) => [date, state])).toEqual([
      ['2026-03-02', 'none-seen'],
      ['2026-03-03', 'unknown'],
      ['2026-03-04', 'none-seen'],
    ]);
    expect(nights[1]).toMatchObject({ share: 0, lowest: null, lowestMinute: null, longestLow: 0 });
  });

  test('minutes low and high, the lowest and its time', () => {
    const value = (minute: number) =>
      between(minute, 60, 90) ? 65 : between(minute, 90, 105) ? 50 : minute < 30 ? 190 : 120;
    expect(night(value)).toMatchObject({
      share: 1,
      state: 'very-low',
      lowMinutes: 45,
      veryLowMinutes: 15,
      highMinutes: 30,
      lowest: 50,
      lowestMinute: 90,
      longestLow: 45,
    });
  });

  test('the longest low is told whole when it reaches over midnight or six', () => {
    const nights = found({
      days: 2,
      value: (minute, day) =>
        (day === 0 && minute >= 1380) || (day === 1 && minute < 60) || between(minute, 350, 380) ? 60 : 120,
    });
    expect(nights.map(({ longestLow }) => longestLow)).toEqual([30, 120]);
  });

  test('the night of a clock change has an hour less or more', () => {
    const spring = found({
      from: '2024-03-31',
      days: 1,
      zone: 'Europe/Vienna',
      value: (minute) => (between(minute, 120, 180) ? null : 110),
    });
    expect(spring[0]!.share).toBeCloseTo(1, 9);
    const autumn = found({
      from: '2024-10-27',
      days: 1,
      zone: 'Europe/Vienna',
      value: (minute) => (between(minute, 120, 180) ? null : 110),
    });
    expect(autumn[0]!.share).toBeCloseTo(5 / 7, 9);
  });
});

test("the lowest of a night says whether it lies at the sensor's limit", () => {
  expect(night((minute) => (minute === 100 ? 40 : 110))).toMatchObject({ lowest: 40, lowestLimit: 0 });
  const atLimit = found({
    days: 2,
    value: (minute, day) => (day === 1 && minute === 200 ? { native: 40, limit: -1 } : minute === 100 ? 40 : 110),
  })[1]!;
  expect(atLimit).toMatchObject({ lowest: 40, lowestLimit: -1, lowestMinute: 200 });
});

test('a clock that goes back over midnight hides nothing of the night after it', () => {
  // A phone that takes the time of another zone half an hour after midnight: 00:30 becomes 23:30, and midnight comes again.
  const start = Date.parse('2026-03-02T20:00Z');
  const rows = Array.from({ length: 120 }, (_, k) => {
    const at = start + k * 5 * 60_000;
    const offset = k < 54 ? 0 : -60;
    return { wall: at + offset * 60_000, offset, native: k > 80 && k < 90 ? 50 : 110 };
  });
  const { nights } = measure(built([fileOf(rows)]), targetSets.adult);
  expect(nights.ok && nights.value.at(-1)).toMatchObject({ state: 'very-low', veryLowMinutes: 45, lowest: 50 });
});

import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, type NoteOn, timelineOf } from '../support/timeline.ts';

/** Monnier 2013, Diabetes Care 36:4057-4062: before breakfast minus the lowest of 00:00-06:00; hours of meals are ours. */
const of = (days: DaysOf) => measure(timelineOf(days), targetSets.adult).dawnRise;

function risesOf(days: DaysOf) {
  const found = of(days);
  if (!found.ok) throw new Error(found.why);
  return found.value;
}

const DAYS = 6;
const meal = (minute: number, day: number, kind: NoteOn['kind'] = 'meal'): NoteOn => ({ day, minute, kind });
/** The same notes every day. */
const daily = (...minutes: number[]): NoteOn[] =>
  Array.from({ length: DAYS }, (_, day) => minutes.map((minute) => meal(minute, day))).flat();
/** Climbs by 1 mg/dL in five minutes from 90 at three to the afternoon. */
const climb = (minute: number) => (minute < 180 ? 100 : 90 + (minute - 180) / 5);
/** The mean of the readings from one minute to before another. */
const meanFrom = (from: number, to: number) => (climb(from) + climb(to - 5)) / 2;
const beforeOf = (notes: NoteOn[]) => risesOf({ days: DAYS, value: climb, notes }).nights[0]!.before;

describe('before breakfast', () => {
  test('is from six to eight without a meal noted, both ends as the clock says', () => {
    expect(beforeOf([])).toBeCloseTo(meanFrom(360, 480), 9);
    const dip = (minute: number) => (minute === 360 ? 75 : minute === 355 ? 85 : minute === 480 ? 300 : 120);
    const night = risesOf({ days: DAYS, value: dip }).nights[0]!;
    expect(night).toMatchObject({ nadir: 85, nadirMinute: 355 });
    expect(night.before).toBeCloseTo((75 + 23 * 120) / 24, 9);
  });

  test.each<[string, number[], number, number]>([
    ['at seven', [420], 405, 420],
    ['at a minute past seven', [421], 410, 425],
    ['the earlier of two', [420, 480], 405, 420],
    ['in whatever order they stand', [480, 420], 405, 420],
    ['at five, which ends the night', [300], 285, 300],
    ['a minute before eleven', [659], 645, 660],
    ['at eleven is none', [660], 360, 480],
  ])('is the quarter of an hour before the first meal: %s', (_, minutes, from, to) => {
    expect(beforeOf(daily(...minutes))).toBeCloseTo(meanFrom(from, to), 9);
  });

  test('without a meal is to the last minute before eight', () => {
    const { before } = risesOf({ days: 5, every: 1, value: (minute) => (minute === 479 ? 240 : 120) }).nights[0]!;
    expect(before).toBeCloseTo(121, 9);
  });

  test('is not told by another note, nor by a meal of another day', () => {
    const notes = [meal(420, 0, 'insulin'), meal(400, 0, 'exercise'), meal(420, 1)];
    expect(beforeOf(notes)).toBeCloseTo(meanFrom(360, 480), 9);
  });
});

describe('which nights count', () => {
  const datesOf = (days: DaysOf) => risesOf(days).nights.map(({ date }) => date.slice(-2));

  test('five are enough', () => {
    expect(risesOf({ days: 5, value: climb }).nights).toHaveLength(5);
  });

  test('not one with a meal before five', () => {
    expect(datesOf({ days: DAYS, value: climb, notes: [meal(299, 2), meal(300, 3)] })).toEqual([
      '02',
      '03',
      '05',
      '06',
      '07',
    ]);
  });

  test('one of which 70 % were seen, to six or to an early breakfast', () => {
    const lost = [0, 108, 111, 0, 90, 93, 0, 0];
    const value = (minute: number, day: number) => (minute < lost[day]! ? null : climb(minute));
    const notes = [meal(300, 4), meal(300, 5)];
    expect(datesOf({ days: 8, every: 3, value, notes })).toEqual(['02', '03', '05', '06', '08', '09']);
  });

  test('one that was seen before breakfast as well', () => {
    const value = (minute: number, day: number) => (day === 1 && minute >= 360 && minute < 480 ? null : climb(minute));
    expect(datesOf({ days: DAYS, value })).not.toContain('03');
  });
});

describe('the lowest of the night', () => {
  test('may be the first reading of all, and is never one of the next day', () => {
    const value = (minute: number, day: number) =>
      minute === 0 ? (day === 0 ? 72 : 80) : minute === 5 && day === 0 ? 75 : minute < 360 ? 90 : 120;
    const { nights } = risesOf({ days: DAYS, value });
    expect(nights.map(({ nadir, nadirMinute }) => [nadir, nadirMinute])).toEqual([
      [72, 0],
      ...nights.slice(1).map(() => [80, 0]),
    ]);
  });

  test('is of its own night', () => {
    const value = (minute: number, day: number) => (minute < 360 ? (day === 0 && minute < 30 ? 75 : 90 + day) : 120);
    expect(risesOf({ days: DAYS, value }).nights.map(({ nadir }) => nadir)).toEqual([75, 91, 92, 93, 94, 95]);
  });
});

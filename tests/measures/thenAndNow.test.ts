import { describe, expect, test } from 'vitest';
import { context, NOTHING_ASKED } from '../../src/measures/context.ts';
import { comparedWithOf, leftBy } from '../../src/measures/earlier.ts';
import { measure } from '../../src/measures/index.ts';
import type { ComparedWith } from '../../src/model/thenAndNow.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import type { Visit } from '../../src/model/visits.ts';
import { targetSets } from '../../src/targets/index.ts';
import { built, fileOf, rowsOf, timelineOf } from '../support/timeline.ts';
import { visitLike } from '../support/visits.ts';

/** Which days stand on which side, and what is summed of each. How they are compared is held in tests/comparing. */
const compared = (timeline: Timeline, comparedWith: ComparedWith | null) =>
  measure(timeline, targetSets.adult, undefined, { ...NOTHING_ASKED, comparedWith }).thenAndNow;

function comparisonOf(timeline: Timeline, comparedWith: ComparedWith) {
  const found = compared(timeline, comparedWith);
  if (!found.ok) throw new Error(found.why);
  return found.value;
}

const value = (minute: number, day: number) => 100 + (minute % 60) + day;

describe('before and after a marked day', () => {
  const change = (date: string): ComparedWith => ({ with: 'change', date: date as never, text: 'new routine' });
  /** Sensors change at noon of the eleventh and of the twentieth of 28 days. */
  const month = timelineOf({
    days: 28,
    value,
    without: [
      { day: 10, from: 600, to: 720 },
      { day: 19, from: 600, to: 720 },
    ],
  });

  test('the day itself is of the second side', () => {
    const found = comparisonOf(month, change('2026-03-16'));
    expect(found).toMatchObject({ with: 'change', text: 'new routine' });
    expect(found.before).toMatchObject({ from: '2026-03-02', to: '2026-03-15', days: 14, sensors: 2 });
    expect(found.now).toMatchObject({ from: '2026-03-16', to: '2026-03-29', days: 14, sensors: 2 });
    const mean = found.changes.find(({ of }) => of === 'mean')!;
    expect(mean.change).toBeCloseTo(14, 0);
  });

  test('sensors are those worn on either side', () => {
    expect(comparisonOf(month, change('2026-03-12')).before.sensors).toBe(1);
    expect(comparisonOf(month, change('2026-03-13')).before.sensors).toBe(2);
    expect(comparisonOf(month, change('2026-03-22')).now.sensors).toBe(1);
    expect(comparisonOf(month, change('2026-03-21')).now.sensors).toBe(2);
    expect(comparisonOf(month, change('2026-03-12')).now.sensors).toBe(3);
  });

  test.each(['2026-03-02', '2026-02-01', '2026-03-30'])('there is nothing to compare at the edge: %s', (date) => {
    expect(compared(month, change(date))).toEqual({ ok: false, why: 'no-earlier-readings' });
  });
});

describe('beside an earlier period', () => {
  const files = [fileOf(rowsOf({ days: 40, value }))];
  const now = built(files, { period: { from: '2026-03-28', to: '2026-04-10' } });
  const askedWith = (compare: unknown, zone?: string, earlier: readonly Visit[] = []) =>
    comparedWithOf(
      files,
      { compare: compare as never, ...(zone === undefined ? {} : { zone }) },
      now,
      targetSets.adult,
      earlier,
    );

  test('as many days right before it, or the days named', () => {
    const previous = askedWith({ with: 'previous' });
    expect(previous).toMatchObject({ with: 'previous' });
    const datesOf = (found: ComparedWith | null) =>
      found && 'before' in found && found.before ? found.before.days.map(({ date }) => date) : [];
    expect([datesOf(previous).length, datesOf(previous)[0], datesOf(previous).at(-1)]).toEqual([
      14,
      '2026-03-14',
      '2026-03-27',
    ]);
    const named = datesOf(askedWith({ with: 'dates', from: '2026-03-03', to: '2026-03-16' }));
    expect([named.length, named[0], named.at(-1)]).toEqual([14, '2026-03-03', '2026-03-16']);
    expect(comparisonOf(now, previous!)).toMatchObject({
      with: 'previous',
      text: '',
      before: { from: '2026-03-14', to: '2026-03-27', days: 14 },
      now: { from: '2026-03-28', to: '2026-04-10', days: 14 },
    });
  });

  test('on the clock of the zone that was named', () => {
    // Helsinki went from +02:00 to +03:00 on 29 March 2026 (IANA), inside the days named.
    const found = askedWith({ with: 'dates', from: '2026-03-20', to: '2026-04-02' }, 'Europe/Helsinki');
    const lengths = found && 'before' in found && found.before ? found.before.days.map(({ length }) => length) : [];
    expect(lengths.filter((length) => length !== 1440)).toEqual([1380]);
  });

  test('what is a mark, a visit or nothing is handed on', () => {
    expect(askedWith(undefined)).toBeNull();
    expect(askedWith({ with: 'change', date: '2026-04-01', text: 'x' })).toEqual({
      with: 'change',
      date: '2026-04-01',
      text: 'x',
    });
    const before = leftBy(now, targetSets.adult).sums;
    expect(askedWith({ with: 'visits' }, undefined, [visitLike(before)])).toEqual({ with: 'visit', before });
    expect(askedWith({ with: 'visits' })).toEqual({ with: 'visit', before: null });
  });

  test('there is nothing to compare with where it holds no readings, or was not asked for', () => {
    const none = askedWith({ with: 'dates', from: '2025-03-03', to: '2025-03-16' });
    expect(none).toEqual({ with: 'dates', before: null });
    expect(compared(now, none)).toEqual({ ok: false, why: 'no-earlier-readings' });
    expect(compared(now, null)).toEqual({ ok: false, why: 'not-asked' });
  });
});

test('days as sums: readings with a number, bands, and what began on each', () => {
  const unknown = { native: Number.NaN, limit: 1 } as const;
  const low = (minute: number, from: number, to: number) => minute >= from && minute < to;
  const timeline = timelineOf({
    days: 3,
    value: (minute, day) => {
      if (day === 0) return low(minute, 60, 90) || low(minute, 1410, 1440) ? 60 : 120;
      if (day === 1) return low(minute, 0, 30) ? 60 : low(minute, 300, 330) ? 50 : low(minute, 600, 660) ? 200 : 120;
      return low(minute, 0, 720) ? unknown : 100;
    },
  });
  const { sums } = leftBy(timeline, targetSets.adult);
  expect(sums).toMatchObject({ targets: 'adult', unit: 'mg/dL', interval: 5, sensors: 1 });
  expect(sums.days).toMatchObject([
    { date: '2026-03-02', length: 1440, minutes: 1440, known: 1440, lows: 2, veryLows: 0, highs: 0 },
    { date: '2026-03-03', minutes: 1440, lows: 1, veryLows: 1, highs: 1, bands: [30, 30, 1320, 60, 0] },
    { date: '2026-03-04', minutes: 1440, known: 720, sum: 72_000, squares: 7_200_000, lows: 0, highs: 1 },
  ]);
  expect(context(timeline, targetSets.adult).lows()).toHaveLength(3);
});

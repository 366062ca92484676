import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { built, fileOf } from '../support/timeline.ts';
import { many, type RunOptions, runOf, type Slot } from './runs.ts';

/** Slopes worked by hand from the least-squares formula; bands of 1, 2 and 3 mg/dL a minute are from memory. */
const of = (slots: readonly Slot[], options: RunOptions = {}) => measure(runOf(slots, options), targetSets.adult).rates;

function ratesOf(slots: readonly Slot[], options: RunOptions = {}) {
  const rates = of(slots, options);
  if (!rates.ok) throw new Error(rates.why);
  return { n: rates.n, ...rates.value };
}

/** A dozen readings that move by so much every five minutes. */
const line = (step: number): Slot[] => Array.from({ length: 12 }, (_, i) => 220 + (i - 6) * step);

describe('how fast glucose moves', () => {
  test.each([
    [5, [0, 0, 0]],
    [6, [1, 0, 0]],
    [10, [1, 0, 0]],
    [11, [1, 1, 0]],
    [15, [1, 1, 0]],
    [16, [1, 1, 1]],
  ])('%i mg/dL in five minutes is over 1, 2 and 3 a minute: %j', (step, [over1, over2, over3]) => {
    const none = { over1: 0, over2: 0, over3: 0 };
    expect(ratesOf(line(step))).toMatchObject({ rising: { over1, over2, over3 }, falling: none, steepest: null });
    expect(ratesOf(line(-step))).toMatchObject({
      falling: { over1, over2, over3 },
      rising: none,
      steepest: { rate: -step / 5, date: '2026-03-02', minute: 0, from: 220 + 6 * step, to: 220 + 3 * step },
    });
  });

  test.each([
    [5.25, [1, 0, 0]],
    [10.25, [1, 1, 0]],
    [15.25, [1, 1, 1]],
  ])('a little over 1, 2 or 3 a minute is over it: %d in five minutes', (step, [over1, over2, over3]) => {
    expect(ratesOf(line(step)).rising).toEqual({ over1, over2, over3 });
    expect(ratesOf(line(-step)).falling).toEqual({ over1, over2, over3 });
  });

  test('each share is of all slopes', () => {
    const { falling, n } = ratesOf([...many(200, 9), 180, ...many(160, 10)]);
    // By hand: -0.8, -2, -2.4, -2 and -0.8 where the fall stands in the five readings, 0 elsewhere.
    expect(n).toBe(17);
    expect(falling.over1).toBeCloseTo(3 / 17, 9);
    expect(falling.over2).toBeCloseTo(1 / 17, 9);
  });

  test('a slope is of the readings of 20 minutes, all of them', () => {
    // By 16 in each of three steps: -2.56 over five readings, where the four of 15 minutes alone would give -3.2.
    const { steepest } = ratesOf([...many(200, 8), 184, 168, ...many(152, 8)], { from: 600 });
    expect(steepest!.rate).toBeCloseTo(-2.56, 9);
    expect(steepest).toMatchObject({ minute: 630, from: 200, to: 152 });
  });

  test('the largest fall is between any two readings of the same 20 minutes, with its own minutes and limits', () => {
    // The steepest line is elsewhere: 5 x 10 down in a straight line against a peak of 60 that falls at once.
    const line = [200, 190, 180, 170, 160, 150];
    const { largest } = ratesOf([...many(200, 6), ...line, ...many(150, 6), 210, ...many(150, 6)], { from: 600 });
    expect(largest).toMatchObject({ minute: 690, minutes: 5, from: 210, to: 150, limits: { from: 0, to: 0 } });
    const beyond = ratesOf([...many(150, 4), { native: 400, limit: 1 }, 300, 300, { native: 40, limit: -1 }, 60, 60]);
    expect(beyond.largest).toMatchObject({ minutes: 15, from: 400, to: 40, limits: { from: 1, to: -1 } });
    expect(ratesOf(many(150, 12)).largest).toBeNull();
  });

  test('four readings over 14 minutes tell one, and fewer or closer none', () => {
    expect(ratesOf(many(100, 12)).n).toBe(9);
    expect(ratesOf(many(100, 30), { step: 1 }).n).toBe(16);
    expect(ratesOf(many(100, 4)).n).toBe(1);
    for (const few of [of(many(100, 3)), of(many(100, 60), { step: 10 }), of(many(100, 14), { step: 1 })])
      expect(few).toEqual({ ok: false, why: 'too-few-readings' });
  });

  /** Readings at so many seconds. */
  const at = (...seconds: [at: number, value: number][]) => {
    const rows = seconds.map(([second, native]) => ({ wall: Date.UTC(2026, 2, 2) + second * 1000, native }));
    const { rates } = measure(built([fileOf(rows)]), targetSets.adult);
    return rates.ok ? { n: rates.n, ...rates.value } : rates.why;
  };

  test.each([
    [1230, 1],
    [1231, 0.5],
  ])('twenty minutes are taken to half a minute: %d seconds', (last, over3) => {
    // By hand: -6 a minute over the first four; over all five -3.9, over the last four 0.
    const slots = at([0, 200], [300, 100], [600, 100], [900, 100], [last, 100]);
    expect(slots).toMatchObject({ n: 2, falling: { over3 } });
  });

  test.each([
    [840, 1],
    [834, 0],
  ])('four readings over %d seconds tell one, or none', (last, slopes) => {
    const seen = at([0, 200], [300, 190], [600, 180], [last, 170]);
    expect(slopes === 0 ? seen : (seen as { n: number }).n).toBe(slopes === 0 ? 'too-few-readings' : slopes);
  });

  test('no slope crosses a gap', () => {
    const { n, steepest } = ratesOf([...many(200, 6), ...many(null, 4), ...many(80, 6)]);
    expect([n, steepest]).toEqual([6, null]);
  });

  test('the steepest is told with the day on which it begins', () => {
    const slots = [...many(200, 8), 190, 180, 170, ...many(160, 8)];
    expect(ratesOf(slots, { from: 1395 }).steepest).toMatchObject({ date: '2026-03-02', minute: 1430 });
  });
});

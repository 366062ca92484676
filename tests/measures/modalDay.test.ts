import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { smoothed } from '../../src/measures/smoothing.ts';
import type { ModalBin, ModalDay } from '../../src/model/measures.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';

function found(timeline: Timeline): ModalDay {
  const { modalDay } = measure(timeline, targetSets.adult);
  if (!modalDay.ok) throw new Error(modalDay.why);
  return modalDay.value;
}

const CURVES = ['p5', 'p25', 'p50', 'p75', 'p95'] as const;
const bin = (minute: number, p50: number | null): ModalBin => ({
  minute,
  p5: p50,
  p25: p50,
  p50,
  p75: p50,
  p95: p50,
  n: 30,
  days: 10,
});

describe('modal day', () => {
  test.each([
    [1, 15, 96],
    [3, 15, 96],
    [5, 15, 96],
    [6, 30, 48],
    [10, 30, 48],
    [15, 30, 48],
    [30, 60, 24],
  ])('readings every %i minutes fall into bins of %i', (every, binMinutes, bins) => {
    const day = found(timelineOf({ every, value: () => 100 }));
    expect([day.binMinutes, day.raw.length, day.bins.length]).toEqual([binMinutes, bins, bins]);
    expect(day.raw[0]).toMatchObject({ minute: 0, n: (14 * binMinutes) / every, days: 14, p50: 100 });
    expect(day.bins.map(({ minute }) => minute)).toEqual(day.bins.map((_, b) => b * binMinutes));
  });

  test('bins are as wide as an hour from intervals of more than 15 minutes on', () => {
    expect(found(timelineOf({ every: 16, value: () => 100 })).binMinutes).toBe(60);
  });

  test('percentiles are of type 7: 1 to 42 in one bin (Hyndman & Fan 1996: 1 + 41 p)', () => {
    const day = found(timelineOf({ value: (minute, d) => 100 + d * 3 + (minute % 15) / 5 + 1 }));
    const expected = [0.05, 0.25, 0.5, 0.75, 0.95].map((p) => expect.closeTo(101 + 41 * p, 9));
    for (const raw of day.raw) expect(CURVES.map((curve) => raw[curve])).toEqual(expected);
  });

  test('a bin with fewer than 5 readings or 5 days stays empty; outer curves ask for 20 readings', () => {
    const day = found(
      timelineOf({
        value: (minute, d) => {
          if (minute < 15 && d >= 4) return null;
          if (minute >= 15 && minute < 30 && d >= 6) return null;
          return 100;
        },
      }),
    );
    expect(day.raw[0]).toMatchObject({ n: 12, days: 4, p5: null, p50: null, p95: null });
    expect(day.raw[1]).toMatchObject({ n: 18, days: 6, p5: null, p25: 100, p50: 100, p75: 100, p95: null });
    expect(day.raw[2]).toMatchObject({ n: 42, days: 14, p5: 100, p95: 100 });
    expect(day.bins[0]!.p50).toBeNull();
    expect(day.bins[1]).toMatchObject({ p5: null, p25: 100, p50: 100, p75: 100, p95: null });
  });

  test('days are counted that have readings in a bin, whichever they are', () => {
    const day = found(timelineOf({ value: (minute, d) => (minute < 15 && d % 2 === 0 ? null : 100) }));
    expect([day.raw[0]!.days, day.raw[1]!.days]).toEqual([7, 14]);
    const { modalDay } = measure(
      timelineOf({ days: 9, value: (_, d) => (d % 2 === 0 ? null : 100) }),
      targetSets.adult,
    );
    expect(modalDay).toEqual({ ok: false, why: 'too-few-days' });
    const five = measure(timelineOf({ days: 10, value: (_, d) => (d % 2 === 0 ? null : 100) }), targetSets.adult);
    expect(five.modalDay).toMatchObject({ ok: true, n: 5 });
  });

  test('five days, and outer curves of exactly 20 readings, are enough', () => {
    const five = found(timelineOf({ days: 5, value: () => 100 }));
    expect(five.raw[0]).toMatchObject({ n: 15, days: 5, p50: 100 });
    const twenty = found(timelineOf({ every: 15, value: (minute, d) => (minute < 30 && d >= 10 ? null : 100) }));
    expect(twenty.raw[0]).toMatchObject({ n: 20, p5: 100, p95: 100 });
    const lost = (minute: number, d: number) => minute < 30 && (d >= 10 || (d === 9 && minute === 15));
    const nineteen = found(timelineOf({ every: 15, value: (minute, d) => (lost(minute, d) ? null : 100) }));
    expect(nineteen.raw[0]).toMatchObject({ n: 19, p5: null, p25: 100, p95: null });
    expect(found(timelineOf({ days: 5, every: 60, value: () => 100 })).raw[0]).toMatchObject({ n: 5, p25: 100 });
  });

  test('values that lie within a quarter of a mg/dL, or above all steps, are still in order', () => {
    const day = found(timelineOf({ days: 5, every: 15, value: (minute, d) => 100.2 - d * 0.04 - minute / 1e5 }));
    expect(day.raw[0]!.p25).toBeCloseTo(100.0798875, 9);
    expect(day.raw[0]!.p75).toBeCloseTo(100.1599625, 9);
    const high = found(timelineOf({ days: 5, every: 15, value: (_, d) => 1500 - d * 100 }));
    expect(high.raw[0]).toMatchObject({ p25: 1200, p50: 1300, p75: 1400 });
  });

  test('fewer than five days make none', () => {
    const { modalDay } = measure(timelineOf({ days: 4, value: () => 100 }), targetSets.adult);
    expect(modalDay).toEqual({ ok: false, why: 'too-few-days' });
  });

  test('an unknown bound counts as lower than anything the sensor reported', () => {
    const day = found(
      timelineOf({ value: (minute, d) => (minute < 15 && d < 7 ? { native: Number.NaN, limit: -1 } : 90 + d) }),
    );
    expect(day.raw[0]!.p25).toBe(54);
    expect(day.raw[0]!.p75).toBeGreaterThan(90);
  });
});

describe('smoothing', () => {
  test('weighs 1-2-1 round the clock', () => {
    const bins = smoothed([bin(0, 100), bin(15, 140), bin(30, 100), bin(45, 60)]);
    expect(bins.map(({ p50 }) => p50)).toEqual([100, 120, 100, 80]);
  });

  test('takes nothing from an empty bin and fills none', () => {
    const bins = smoothed([bin(0, 100), bin(15, null), bin(30, 130), bin(45, 160)]);
    expect(bins.map(({ p50 }) => p50)).toEqual([
      expect.closeTo(120, 9),
      null,
      expect.closeTo(140, 9),
      expect.closeTo(137.5, 9),
    ]);
  });

  test('lends a curve that is missing nothing, and keeps it between its neighbours', () => {
    const wide = { ...bin(0, 100), p5: 90, p25: 91, p75: 109, p95: 110 };
    const narrow = { ...bin(15, 100), p5: null, p25: 80, p75: 120, p95: null };
    const [first, second] = smoothed([wide, narrow, narrow]);
    expect(first).toMatchObject({ p5: 85.5, p25: 85.5, p75: 114.5, p95: 114.5 });
    expect(second).toMatchObject({ p5: null, p25: 82.75, p75: 117.25, p95: null });
  });

  test('leaves the curves in order, whatever was missing', () => {
    const curve = fc.option(fc.double({ min: 40, max: 400, noNaN: true }), { nil: null, freq: 4 });
    const raw = fc.tuple(curve, curve, curve, curve, curve).map(([a, b, c, d, e]) => {
      const sorted = [a, b, c, d, e].map((value) => value ?? 150).toSorted((x, y) => x - y);
      const outer = a !== null;
      return {
        ...bin(0, sorted[2]!),
        p5: outer ? sorted[0]! : null,
        p25: sorted[1]!,
        p75: sorted[3]!,
        p95: outer ? sorted[4]! : null,
      };
    });
    fc.assert(
      fc.property(fc.array(raw, { minLength: 3, maxLength: 30 }), (bins) => {
        for (const smooth of smoothed(bins)) {
          const known = CURVES.map((name) => smooth[name]).filter((value) => value !== null);
          expect(known).toEqual(known.toSorted((x, y) => x - y));
        }
      }),
    );
  });
});

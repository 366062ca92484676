import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { indices, indicesOf } from '../../src/indices/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';

const words = JSON.parse(readFileSync(new URL('../../templates/words/en.json', import.meta.url), 'utf8'));
const wave = (minute: number, day: number) => Math.round(140 + 60 * Math.sin(minute / 90) + 3 * day);

describe('further indices', () => {
  test.each(Object.entries(indices))('%s: id, source, unit and words', (id, index) => {
    expect(index.id).toBe(id);
    expect(index.source.length).toBeGreaterThan(0);
    expect(index.unit.length).toBeGreaterThan(0);
    expect(words.indices[id]).toMatchObject({ name: expect.any(String), definition: expect.any(String) });
  });

  test('all of a fortnight, and none of them NaN', () => {
    const found = indicesOf(timelineOf({ value: wave }), targetSets.adult);
    for (const [id, index] of Object.entries(found)) {
      expect([id, index.ok]).toEqual([id, true]);
      if (!index.ok) continue;
      const numbers = typeof index.value === 'number' ? [index.value] : Object.values(index.value);
      for (const value of numbers) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    }
  });

  test('a wave of 60 around the same level each day: MODD is the step from day to day', () => {
    const { modd, mage, gri, tightRange } = indicesOf(
      timelineOf({ value: (minute, day) => 140 + 60 * Math.cos((minute / 1440) * 8 * Math.PI) + 3 * day }),
      targetSets.adult,
    );
    expect(modd.ok && modd.value).toBeCloseTo(3, 9);
    expect(mage.ok && mage.value).toBeGreaterThan(115);
    expect(mage.ok && mage.value).toBeLessThanOrEqual(120.001);
    expect(gri.ok && gri.value.gri).toBeGreaterThan(0);
    expect([gri, tightRange].map((each) => each.ok && [each.n, each.of])).toEqual([
      [14 * 288, 'readings'],
      [14 * 288, 'readings'],
    ]);
    expect(tightRange.ok && tightRange.value).toBeLessThan(0.5);
  });

  test('little data and pregnancy are said, not computed over', () => {
    const few = indicesOf(timelineOf({ days: 2, value: wave }), targetSets.adult);
    expect([few.gri, few.adrr, few.lability]).toEqual([
      { ok: false, why: 'too-few-readings' },
      { ok: false, why: 'too-few-days' },
      { ok: false, why: 'too-few-days' },
    ]);
    const pregnant = indicesOf(timelineOf({ value: wave }), targetSets['pregnancy-type-1']);
    expect([pregnant.gri, pregnant.tightRange]).toEqual(new Array(2).fill({ ok: false, why: 'not-for-these-targets' }));
    const unknown = indicesOf(
      timelineOf({ days: 1, value: () => ({ native: Number.NaN, limit: 1 }) }),
      targetSets.adult,
    );
    for (const id of ['mage', 'modd', 'grade', 'spreads'] as const)
      expect(unknown[id]).toEqual({ ok: false, why: 'no-readings' });
  });

  test('readings beyond the sensor without a number count in the shares of a part, not in its mean', () => {
    const beyond = { native: Number.NaN, limit: 1 } as const;
    const found = indicesOf(
      timelineOf({
        value: (minute) => (minute < 180 ? { native: Number.NaN, limit: -1 } : minute < 1080 ? 100 : beyond),
      }),
      targetSets.adult,
    );
    const parts = found.clockBlocks.ok ? found.clockBlocks.value : {};
    expect(parts).toMatchObject({ sleepMean: 100, sleepInRange: 50, sleepLow: 50, wakeMean: 100 });
    expect(parts.wakeHigh).toBeCloseTo(100 / 3, 9);
    expect(found.weekParts.ok && found.weekParts.value.weekendLow).toBeCloseTo(12.5, 9);
    expect(found.tightRange).toMatchObject({ value: 0.625, n: 14 * 288 });
  });

  test('mmol/L is judged in mmol/L: 7.8 is in the tight range', () => {
    const found = indicesOf(timelineOf({ unit: 'mmol/L', value: () => 7.8 }), targetSets.adult);
    expect(found.tightRange.ok && found.tightRange.value).toBe(1);
  });
});

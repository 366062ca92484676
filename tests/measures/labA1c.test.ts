import { describe, expect, test } from 'vitest';
import { NOTHING_ASKED } from '../../src/measures/context.ts';
import { measure } from '../../src/measures/index.ts';
import type { TargetSet } from '../../src/model/targets.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

/** GMI: Bergenstal 2018, Diabetes Care 41:2275-2280, 3.31 + 0.02392 of the mean; not in pregnancy (from memory). */
function labOf(days: Omit<DaysOf, 'value'> & Partial<DaysOf>, set: TargetSet['id'] = 'adult') {
  const asked = { ...NOTHING_ASKED, a1c: { value: 7, unit: '%' as const } };
  const { labA1c } = measure(timelineOf({ value: () => 150, ...days }), targetSets[set], undefined, asked);
  if (!labA1c.ok) throw new Error(labA1c.why);
  return labA1c.value;
}

describe('a laboratory A1C beside the sensor', () => {
  test('lies apart by GMI less A1C', () => {
    const { mean, gmi, difference, percent } = labOf({ days: 3 });
    expect([mean, percent]).toEqual([150, 7]);
    expect(gmi).toBeCloseTo(6.898, 9);
    expect(difference).toBeCloseTo(-0.102, 9);
  });

  test('stands alone without 72 hours, and where the targets know no GMI', () => {
    const short = { days: 3, without: [{ day: 0, from: 0, to: 30 }] };
    for (const found of [labOf(short), labOf({ days: 14 }, 'pregnancy-type-1')])
      expect(found).toMatchObject({ mean: 150, gmi: null, difference: null });
  });

  test('is nothing where none was typed in', () => {
    const { labA1c } = measure(timelineOf({ days: 3, value: () => 150 }), targetSets.adult);
    expect(labA1c).toEqual({ ok: false, why: 'not-asked' });
  });

  test('and where no reading has a number', () => {
    expect(labOf({ days: 4, value: () => ({ native: Number.NaN, limit: 1 }) })).toMatchObject({
      mean: null,
      gmi: null,
      difference: null,
      percent: 7,
    });
  });
});

import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { many, type RunOptions, runOf, type Slot } from './runs.ts';

/** Acciaroli 2022, J Diabetes Sci Technol 16:677-682: above 180 starting within 120 minutes of a low. */
function reboundsOf(slots: readonly Slot[], options: RunOptions = {}) {
  const { rebounds } = measure(runOf(slots, options), targetSets.adult);
  if (!rebounds.ok) throw new Error(rebounds.why);
  return rebounds.value;
}

const low = [...many(120, 6), ...many(60, 6), ...many(120, 3)];

describe('the peak after a low', () => {
  test.each<[string, Slot[], number]>([
    ['the highest before glucose is back in range', [200, 260, 240, 170, 300], 260],
    ['not across a gap', [200, 240, ...many(null, 5), 300, 300], 240],
    ['across a pause of twenty minutes', [200, 240, null, null, null, 300, 300], 300],
    ['after a gap that ends with it', [...many(null, 5), 200, 260], 260],
    ['to the end of the readings', [200, 260], 260],
  ])('is %s', (_, after, peak) => {
    expect(reboundsOf([...low, ...after]).list).toMatchObject([{ peak }]);
  });

  test('at the limit of the sensor is told as such', () => {
    const above = { native: 400, limit: 1 } as const;
    expect(reboundsOf([...low, 200, 400, above, 300]).list).toMatchObject([{ peak: 400, peakLimit: 1 }]);
    expect(reboundsOf([...low, 200, 400, 300]).list).toMatchObject([{ peak: 400, peakLimit: 0 }]);
  });
});

describe('lows that could show one', () => {
  const seen = (minutes: number) => [...many(120, 10), ...many(60, 10), ...many(120, minutes / 3)];

  test.each([
    [84, 1],
    [81, 0],
  ])('are those after which 70 % of two hours were seen: %i minutes, %i', (minutes, ofLows) => {
    expect(reboundsOf(seen(minutes), { step: 3, days: 1 })).toEqual({ list: [], ofLows });
  });

  test('count one with a high after it, however little was seen', () => {
    expect(reboundsOf([...low, 200])).toMatchObject({
      ofLows: 1,
      list: [{ minutesAfter: 15, highDate: '2026-03-02' }],
    });
    expect(reboundsOf([...low, 200], { from: 1370 }).list).toMatchObject([{ highDate: '2026-03-03' }]);
  });
});

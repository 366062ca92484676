import { expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { type Chance, chance } from '../../src/stats/chance.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';

const gauss = (next: Chance) => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

/** Quartiles of the standard normal distribution (any printed table). */
const QUARTILES = { p25: -0.6745, p50: 0, p75: 0.6745 } as const;

test('on days whose levels correlate by 0.25, the curves’ intervals hold the true percentile about as often as said', () => {
  const next = chance(5);
  const trials = 200;
  const held = { p25: 0, p50: 0, p75: 0 };
  for (let trial = 0; trial < trials; trial++) {
    let level = gauss(next);
    const levels = Array.from({ length: 14 }, () => {
      const own = level;
      level = 0.25 * level + Math.sqrt(1 - 0.25 ** 2) * gauss(next);
      return 150 + 30 * own;
    });
    const { curveRanges } = measure(timelineOf({ every: 60, value: (_, day) => levels[day]! }), targetSets.adult);
    if (!curveRanges.ok) throw new Error(curveRanges.why);
    for (const curve of ['p25', 'p50', 'p75'] as const) {
      const { low, high } = curveRanges.value[3]![curve];
      const truth = 150 + 30 * QUARTILES[curve];
      if (low <= truth && truth <= high) held[curve]++;
    }
  }
  // Two standard errors of 200 trials at 95 % are 3.1; it was 88 to 92 % without an answer for likeness.
  for (const count of Object.values(held)) expect(count / trials).toBeGreaterThanOrEqual(0.919);
});

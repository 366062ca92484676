import { COMPARED, statisticOf } from '../../src/comparing/statistics.ts';
import { compare } from '../../src/comparing/thenAndNow.ts';
import type { Compared, DaySums } from '../../src/model/thenAndNow.ts';
import { chance } from '../../src/stats/chance.ts';
import { simulated, type World } from './simulatedDays.ts';

/** What many comparisons of made-up periods gave, for one number; shares of all comparisons. */
export interface Often {
  /** How often the interval held the true change, of those that had one. */
  held: number;
  /** How often the verdict was "more than noise". */
  known: number;
  /** How often there was an interval. */
  asked: number;
}

/**
 * Compares `trials` pairs of periods. `shift` moves the level of the second, on the log scale. What is true is the mean
 * of long runs of the same world.
 */
export function comparedOften(
  world: World,
  { trials, days, shift = 0, seed = 7 }: { trials: number; days: number; shift?: number; seed?: number },
  wanted: readonly Compared[],
): Record<string, Often> {
  const next = chance(seed);
  const truth = shift === 0 ? {} : trueChanges(world, shift);
  const counts = Object.fromEntries(wanted.map((of) => [of, { held: 0, known: 0, asked: 0 }]));
  for (let trial = 0; trial < trials; trial++) {
    const before = simulated(world, days, 0, '2026-01-01', next);
    const now = simulated(world, days, shift, '2026-04-01', next);
    const compared = compare(before, now);
    if (!compared.ok) throw new Error(compared.why);
    for (const { of, before: then, low, high, verdict } of compared.value.changes) {
      const count = counts[of];
      if (!count) continue;
      if (verdict === 'more-than-noise') count.known++;
      if (low === null || high === null) continue;
      count.asked++;
      // An end at all of what was seen then stands for that and more: a share of 4 % cannot fall by 5 points.
      const change = Math.max(-then, truth[of] ?? 0);
      if (low <= change && change <= high) count.held++;
    }
  }
  return Object.fromEntries(
    Object.entries(counts).map(([of, { held, known, asked }]) => [
      of,
      { held: asked > 0 ? held / asked : 1, known: known / trials, asked: asked / trials },
    ]),
  );
}

/** Changes between two very long periods of a world whose days are drawn independently: the correlation moves no mean. */
function trueChanges(world: World, shift: number): Partial<Record<Compared, number>> {
  const next = chance(99);
  const long = { ...world, correlation: 0 };
  const [before, now] = [0, shift].map((by) => simulated(long, 20_000, by, '2000-01-01', next).days);
  return Object.fromEntries(COMPARED.map((of) => [of, valueOver(of, now!) - valueOver(of, before!)]));
}

function valueOver(of: Compared, days: DaySums[]): number {
  const statistic = statisticOf(of, days);
  return statistic.of(statistic.columns.map((column) => column.reduce((sum, each) => sum + each, 0)));
}

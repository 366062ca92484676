import type { PeriodSums } from '../../src/model/thenAndNow.ts';
import { chance } from '../../src/stats/chance.ts';
import { addDays } from '../../src/time/calendar.ts';
import { trendOf } from '../../src/visits/trend.ts';
import { simulated, type World } from './simulatedDays.ts';

export interface Course {
  visits: number;
  days: number;
  /** What the level moves by from the first visit to the last, log scale; 0: no change. */
  shift: number;
}

/** How often a line through time in range is called more than noise, of so many made people, and how far it truly moved. */
export function trendOften(world: World, { visits, days, shift }: Course, trials: number, seed = 20260801) {
  const next = chance(seed);
  let called = 0;
  let moved = 0;
  for (let trial = 0; trial < trials; trial++) {
    const course = Array.from({ length: visits }, (_, i) =>
      simulated(world, days, (shift * i) / (visits - 1), addDays('2026-01-05', 60 * i), next),
    );
    const trend = trendOf(course);
    if (trend.case === 'line' && trend.verdict === 'more-than-noise') called++;
    moved += share(course.at(-1)!) - share(course[0]!);
  }
  return { called: called / trials, moved: moved / trials };
}

function share({ days }: PeriodSums): number {
  const sum = (of: (day: PeriodSums['days'][number]) => number) => days.reduce((all, day) => all + of(day), 0);
  return sum(({ bands }) => bands[2]) / sum(({ minutes }) => minutes);
}

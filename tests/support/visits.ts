import type { PeriodSums } from '../../src/model/thenAndNow.ts';
import type { Visit } from '../../src/model/visits.ts';

/** A visit file of these days, that says nothing more than it must; what is given replaces it. */
export function visitLike(sums: PeriodSums, given: Partial<Visit> = {}): Visit {
  return {
    file: 'P-1-visit-2026-01-14.json',
    origin: { by: '0.1.0', hash: 'abc', on: sums.days.at(-1)!.date },
    person: {},
    sums,
    goals: [],
    numbers: { inRangeShare: null, lowShare: null, highShare: null, meanMgPerDl: null, nightsLowShare: null },
    topic: null,
    topicMeasure: null,
    held: [],
    agreed: null,
    changed: [],
    ...given,
  };
}

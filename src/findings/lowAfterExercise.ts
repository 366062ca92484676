import type { MgPerDl } from '../model/glucose.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { felt } from './evidence/felt.ts';
import { stretchFrom } from './evidence/places.ts';
import { clock, count, glucose, limit } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Readings below the low limit from the start of exercise to 6 in the morning. Once is enough to be told. */
export const lowAfterExercise: Finding<'low-after-exercise'> = {
  id: 'low-after-exercise',
  source: 'Colberg 2016, Diabetes Care 39:2065-2079 (lows during and after exercise); how far to look: ours',
  look(measures) {
    const { exercise } = measures;
    if (!exercise.ok) return untold(exercise.why);
    const known = exercise.value.filter(({ untilMorning }) => untilMorning.low !== null);
    if (known.length === 0) return untold('too-few-occasions');
    const low = known.filter(({ untilMorning }) => untilMorning.low === true);
    if (low.length === 0) return absent;
    const lowest = Math.min(...low.flatMap(({ untilMorning }) => untilMorning.lowest ?? [])) as MgPerDl;
    return holds(
      {
        limit: limit('low'),
        count: count(low.length),
        of: count(known.length),
        soon: count(low.filter(({ lowSoon }) => lowSoon === true).length),
        unknown: count(exercise.value.length - known.length),
        six: clock(NIGHT_END),
        lowest: glucose(lowest),
        ...felt(measures, ({ start }) =>
          low.some((one) => start >= one.at && start < one.at + one.untilMorning.minutes * MINUTE_MS),
        ),
      },
      low.map((session) => stretchFrom(session, session.untilMorning.minutes)),
    );
  },
};

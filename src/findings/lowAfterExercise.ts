import { SOON } from '../occasions/sessions.ts';
import { stretchFrom } from './evidence/places.ts';
import { count, glucose, limit } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Readings below the low limit while exercise lasted or within two hours after it. Once is enough to be told. */
export const lowAfterExercise: Finding<'low-after-exercise'> = {
  id: 'low-after-exercise',
  source: 'Colberg 2016, Diabetes Care 39:2065-2079 (lows during and after exercise); how far to look: ours',
  look({ exercise }) {
    if (!exercise.ok) return untold(exercise.why);
    const told = exercise.value.filter(({ lowSoon }) => lowSoon !== null);
    if (told.length === 0) return untold('too-few-occasions');
    const low = told.filter(({ lowSoon }) => lowSoon === true);
    const lowest = low.reduce<number>((least, { lowestSoon }) => Math.min(least, lowestSoon ?? least), 1e9);
    if (low.length === 0) return absent;
    return holds(
      { limit: limit('low'), count: count(low.length), of: count(told.length), lowest: glucose(lowest as never) },
      low.map((session) => stretchFrom(session, (session.minutes ?? 30) + SOON)),
    );
  },
};

import { nightOf } from './evidence/places.ts';
import { count, limit, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Told without a hint from so many low nights on, when they are at least twice as frequent as after rest days (ours). */
const FEW = 2;
const TIMES = 2;

/** Nights after exercise beside nights after days with notes but no exercise noted. */
export const nightLowAfterExercise: Finding<'night-low-after-exercise'> = {
  id: 'night-low-after-exercise',
  source:
    'McMahon 2007, J Clin Endocrinol Metab 92:963-968; Davey 2013, J Clin Endocrinol Metab 98:2908-2914; how often: ours',
  look({ comparisons, exercise }) {
    if (!comparisons.ok) return untold(comparisons.why);
    const one = comparisons.value.find(({ id }) => id === 'exercise-night');
    if (!one || one.a.lowsOf === 0 || one.b.lowsOf === 0) return untold('too-few-occasions');
    const share = one.a.lows / one.a.lowsOf;
    const restShare = one.b.lows / one.b.lowsOf;
    const hint = one.verdict === 'hint' && (one.difference?.value ?? 0) < 0;
    const often = one.a.lows >= FEW && share >= 1 / 3 && share >= TIMES * restShare;
    if (!(hint && one.a.lows > 0) && !often) return absent;
    const nights = exercise.ok ? exercise.value.flatMap(({ night }) => (night?.low ? [night.date] : [])) : [];
    return holds(
      {
        limit: limit('low'),
        low: count(one.a.lows),
        nights: count(one.a.lowsOf),
        restLow: count(one.b.lows),
        rest: count(one.b.lowsOf),
        hint: word(hint ? 'hint' : 'count'),
      },
      nights.map(nightOf),
      hint ? 'hint' : 'count',
    );
  },
};

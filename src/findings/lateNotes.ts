import { median } from '../stats/quantile.ts';
import { isRepeated } from './evidence/pattern.ts';
import { count, minutes } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LEAST = 3;

/** Food notes made while glucose was already rising, so that times around them may be off, and how long it had been. */
export const lateNotes: Finding<'late-notes'> = {
  id: 'late-notes',
  source: 'ours',
  look({ meals }) {
    if (!meals.ok) return untold(meals.why);
    const noted = meals.value.filter(({ inferred }) => !inferred);
    if (noted.length < LEAST) return untold('too-few-occasions');
    const late = noted.filter((meal) => meal.late);
    if (!isRepeated(late.length, noted.length)) return absent;
    return holds(
      {
        count: count(late.length),
        of: count(noted.length),
        before: minutes(median(late.map(({ riseBefore }) => riseBefore ?? 0))),
      },
      late.map(({ date, minute }) => ({ date, fromMinute: Math.max(0, minute - 60), toMinute: minute })),
    );
  },
};

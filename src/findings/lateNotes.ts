import { median } from '../stats/quantile.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { mealsLike } from './occasionExamples.ts';
import { isRepeated } from './pattern.ts';
import { count, minutes } from './quantities.ts';

const LEAST = 3;

/** Food notes made while glucose was already rising, so that times around them may be off, and how long it had been. */
export const lateNotes: Finding = {
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
  examples: [
    ['3 of 9 notes', { meals: mealsLike(...late(3), ...inTime(6)) }, 'holds'],
    ['3 of 10 notes', { meals: mealsLike(...late(3), ...inTime(7)) }, 'absent'],
    ['2 notes', { meals: mealsLike(...late(2)) }, 'untold'],
    ['2 of 3 notes', { meals: mealsLike(...late(2), ...inTime(1)) }, 'absent'],
  ],
};

function late(n: number) {
  return Array.from({ length: n }, () => ({ late: true, riseBefore: 35 }));
}

function inTime(n: number) {
  return Array.from({ length: n }, () => ({ late: false }));
}

import { stretchFrom } from './evidence.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { correctionsLike } from './occasionExamples.ts';
import { isRepeated } from './pattern.ts';
import { count, limit } from './quantities.ts';

const LEAST = 3;

/** Readings below the low limit within four hours of mealtime insulin that stands in the log without food. */
export const lowAfterInsulinOnly: Finding = {
  id: 'low-after-insulin-only',
  source: 'ours',
  look({ corrections }) {
    if (!corrections.ok) return untold(corrections.why);
    const told = corrections.value.filter(({ unusable, low }) => unusable.length === 0 && low !== null);
    if (told.length < LEAST) return untold('too-few-occasions');
    const low = told.filter((one) => one.low === true);
    if (!isRepeated(low.length, told.length)) return absent;
    return holds(
      { limit: limit('low'), count: count(low.length), of: count(told.length) },
      low.map((one) => stretchFrom(one, 240)),
    );
  },
  examples: [
    ['3 of 9', { corrections: correctionsLike(...some(9, 3)) }, 'holds'],
    ['3 of 10', { corrections: correctionsLike(...some(10, 3)) }, 'absent'],
    ['2 of 4', { corrections: correctionsLike(...some(4, 2)) }, 'absent'],
    ['2 in all', { corrections: correctionsLike(...some(2, 2)) }, 'untold'],
  ],
};

function some(n: number, low: number) {
  return Array.from({ length: n }, (_, i) => ({ low: i < low }));
}

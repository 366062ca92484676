import type { NoteBefore, OutcomeNotes } from '../../../src/model/notedBefore.ts';
import type { Comparison, ComparisonId } from '../../../src/model/occasions.ts';
import {
  comparisonsLike,
  correctionsLike,
  mealsLike,
  notedBeforeLike,
  noteLogLike,
  sessionsLike,
} from '../../support/examples/occasions.ts';
import type { Example, Examples } from './index.ts';

export const notes = {
  'before-lows': [
    [
      '8 of 10 days with exercise, 0 of 18 without, 18 of 18 lows after it',
      before('lows', [8, 10], [0, 18], [18, 18]),
      'holds',
    ],
    ['the same at night alone', before('night-lows', [5, 6], [0, 20], [9, 9]), 'holds'],
    ['fewer lows with it than without', before('lows', [0, 10], [9, 10], [0, 9]), 'holds'],
    ['not told apart from chance', before('lows', [3, 10], [2, 18], [3, 5], 'not-told-apart'), 'absent'],
    ['no low', before('lows', [0, 10], [0, 18], [0, 0], 'not-told-apart'), 'absent'],
    ['2 days with exercise', before('lows', [2, 2], [1, 18], [3, 3], 'too-few'), 'untold'],
  ],
  'before-highs': [
    ['5 of 6 days with pizza, 0 of 20 without', before('very-highs', [5, 6], [0, 20], [5, 5]), 'holds'],
    ['more time above range on 9 of 9 days', before('much-high', [9, 9], [3, 17], [0, 0]), 'holds'],
    ['not told apart from chance', before('much-high', [5, 9], [8, 17], [0, 0], 'not-told-apart'), 'absent'],
    ['2 days with it', before('much-high', [2, 2], [8, 17], [0, 0], 'too-few'), 'untold'],
  ],
  'before-unsteady': [
    ['9 of 9 days, 4 of 18 without', before('unsteady', [9, 9], [4, 18], [0, 0]), 'holds'],
    ['not told apart from chance', before('unsteady', [5, 9], [9, 18], [0, 0], 'not-told-apart'), 'absent'],
    ['2 days with it', before('unsteady', [2, 2], [9, 18], [0, 0], 'too-few'), 'untold'],
  ],
  'extra-carbs-first': [
    ['a hint', like('hint', 20), 'holds'],
    ['a hint the other way', like('hint', -20), 'holds'],
    [
      'a hint, and food at bedtime on 4 of 4 days against 0 of 5',
      like('hint', 20, { id: 'bedtime-food', name: '', a: { k: 4, n: 4 }, b: { k: 0, n: 5 } }),
      'holds',
    ],
    ['not told apart from chance', like('not-told-apart', 20), 'absent'],
    ['2 sessions with extra food', like('too-few', 20), 'untold'],
  ],
  'exercise-or-rest': [
    ['a hint: 3 of 4 days, 1 of 9 rest days', days('hint', -20, 3, 1), 'holds'],
    ['no hint, yet 2 of 4 days and 2 of 9', days('not-told-apart', -20, 2, 2), 'holds'],
    ['2 of 4 days and 3 of 9', days('not-told-apart', -20, 2, 3), 'absent'],
    ['1 of 4 days and 0 of 9', days('not-told-apart', -20, 1, 0), 'absent'],
    ['a hint the other way', days('hint', 20, 0, 5), 'absent'],
    ['no exercise noted', { comparisons: { ok: true, value: [], n: 0, of: 'pairs' } }, 'untold'],
  ],
  'low-after-exercise': [
    ['1 of 3 sessions, at 3 in the morning', { exercise: sessionsLike({ low: true }, {}, {}) }, 'holds'],
    ['none of 3', { exercise: sessionsLike({}, {}, {}) }, 'absent'],
    ['an hour missing after each of them', { exercise: sessionsLike({ low: null }) }, 'untold'],
    ['none noted', { exercise: sessionsLike() }, 'untold'],
  ],
  'exercise-kinds': [
    ['a hint', { comparisons: comparisonsLike({ id: 'exercise-kind', verdict: 'hint', difference: 40 }) }, 'holds'],
    [
      'not told apart from chance',
      { comparisons: comparisonsLike({ id: 'exercise-kind', verdict: 'not-told-apart', difference: 40 }) },
      'absent',
    ],
    ['one kind only', { comparisons: { ok: true, value: [], n: 0, of: 'pairs' } }, 'untold'],
  ],
  'low-after-meal': [
    ['3 of 9 meals', { meals: mealsLike(...low(3), ...fine(6)) }, 'holds'],
    ['3 of 10 meals', { meals: mealsLike(...low(3), ...fine(7)) }, 'absent'],
    ['2 of 3 meals', { meals: mealsLike(...low(2), ...fine(1)) }, 'absent'],
    ['2 meals', { meals: mealsLike(...low(2)) }, 'untold'],
    [
      'no insulin noted',
      { meals: mealsLike(...low(4).map((one) => ({ ...one, insulin: { when: 'none-noted' as const } }))) },
      'untold',
    ],
  ],
  'low-after-insulin-only': [
    ['3 of 9', { corrections: correctionsLike(...some(9, 3)) }, 'holds'],
    ['3 of 10', { corrections: correctionsLike(...some(10, 3)) }, 'absent'],
    ['2 of 4', { corrections: correctionsLike(...some(4, 2)) }, 'absent'],
    ['2 in all', { corrections: correctionsLike(...some(2, 2)) }, 'untold'],
  ],
  'food-longer-high': mealHintExamples('food', 'absent'),
  'food-shorter-high': mealHintExamples('food', 'absent', -1),
  'larger-meals': mealHintExamples('carb-amount', 'holds'),
  'insulin-after-meal': mealHintExamples('insulin-after', 'holds'),
  'weekend-meals': mealHintExamples('weekend', 'holds'),
  'high-after-meals': [
    ['6 of 9 meals, 61 minutes', { meals: mealsLike(...lasting(61, 61, 61, 61, 61, 61, 0, 0, 0)) }, 'holds'],
    ['one of them 60', { meals: mealsLike(...lasting(61, 61, 61, 61, 61, 60, 0, 0, 0)) }, 'absent'],
    ['6 meals', { meals: mealsLike(...lasting(90, 90, 90, 90, 90, 90)) }, 'untold'],
  ],
  'few-notes': [
    ['9 of 14 days', { noteLog: noteLogLike({ noted: 9 }) }, 'holds'],
    ['7 of 10 days', { noteLog: noteLogLike({ days: 10, noted: 7 }) }, 'absent'],
    ['none at all', { noteLog: noteLogLike({ noted: 0 }) }, 'holds'],
  ],
  'late-notes': [
    ['3 of 9 notes', { meals: mealsLike(...late(3), ...inTime(6)) }, 'holds'],
    ['3 of 10 notes', { meals: mealsLike(...late(3), ...inTime(7)) }, 'absent'],
    ['2 notes', { meals: mealsLike(...late(2)) }, 'untold'],
    ['2 of 3 notes', { meals: mealsLike(...late(2), ...inTime(1)) }, 'absent'],
  ],
} satisfies Partial<Examples>;

function like(verdict: Comparison['verdict'], difference: number, alsoDiffers: Comparison['alsoDiffers'] = null) {
  return { comparisons: comparisonsLike({ id: 'extra-carbs', verdict, difference, alsoDiffers }) };
}

function days(verdict: 'hint' | 'not-told-apart', difference: number, aLow: number, bLow: number) {
  return {
    exercise: sessionsLike({ low: true }),
    comparisons: comparisonsLike({ id: 'exercise-or-rest', verdict, difference, aLow, bLow }),
  };
}

function before(
  of: OutcomeNotes['of'],
  [withK, withN]: [number, number],
  [withoutK, withoutN]: [number, number],
  [k, n]: [number, number],
  verdict: NoteBefore['verdict'] = 'hint',
) {
  return {
    notedBefore: notedBeforeLike(of, {
      withIt: { k: withK, n: withN },
      without: { k: withoutK, n: withoutN },
      followed: { k, n },
      verdict,
    }),
  };
}

function low(n: number) {
  return Array.from({ length: n }, () => ({ low: true }));
}

function fine(n: number) {
  return Array.from({ length: n }, () => ({ low: false }));
}

function some(n: number, low: number) {
  return Array.from({ length: n }, (_, i) => ({ low: i < low }));
}

function lasting(...minutesHigh: number[]) {
  return minutesHigh.map((highMinutes) => ({ highMinutes }));
}

function late(n: number) {
  return Array.from({ length: n }, () => ({ late: true, riseBefore: 35 }));
}

function inTime(n: number) {
  return Array.from({ length: n }, () => ({ late: false }));
}

/** Examples shared by all hints of meals: a hint, the same numbers not told apart, a hint the other way, too few. */
function mealHintExamples(id: ComparisonId, otherWay: 'holds' | 'absent', sign: 1 | -1 = 1): Example[] {
  const like = (verdict: Comparison['verdict'], difference: number) => ({
    comparisons: comparisonsLike({ id, verdict, difference: sign * difference, slot: 'evening' }),
  });
  return [
    ['60 minutes apart, a hint', like('hint', 60), 'holds'],
    ['60 minutes apart, not told apart from chance', like('not-told-apart', 60), 'absent'],
    ['a hint the other way', like('hint', -60), otherWay],
    ['2 of a kind', like('too-few', 60), 'untold'],
    ['none of a kind', { comparisons: { ok: true, value: [], n: 0, of: 'pairs' } }, 'untold'],
  ];
}

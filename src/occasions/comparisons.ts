import type { Comparison, Meal, Session } from '../model/occasions.ts';
import { standOut } from '../stats/many.ts';
import { alsoDiffers } from './alsoDiffers.ts';
import { mealQuestions } from './mealQuestions.ts';
import { movementQuestions } from './movementQuestions.ts';
import { type NotedAt, ofTheDay } from './noted.ts';
import type { RestDay } from './restDays.ts';
import { type Question, tryOut } from './sides.ts';

/**
 * A report with nothing in it shows a hint at most so often. Days that hang together would bring 4 % near 5 %
 * (tests/occasions/simulation.test.ts), so 4 % is what the rule is given (ours).
 */
export const FALSE_HINTS = 0.04;

/** A hint must also be as large as this (ours): minutes, mg/dL, mg/dL. */
export const MATTERS: Record<Comparison['of'], number> = { 'high-minutes': 30, lowest: 15, fall: 20 };

/**
 * Every comparison of the report, movement first. The two families share the allowance for false hints, so that a
 * long list of foods does not drown the few questions about safety; where one has nothing to compare the other has
 * all of it. Sizes decide that, never outcomes.
 */
export function compareAll(
  meals: readonly Meal[],
  sessions: readonly Session[],
  rests: readonly RestDay[],
  noted: readonly NotedAt[],
): Comparison[] {
  const families = [movementQuestions(sessions, rests, noted), mealQuestions(meals)].map((questions) =>
    questions.map((question) => ({ question, tried: tryOut(question) })),
  );
  const asking = families.filter((some) => some.some(({ tried }) => tried.p !== null)).length;
  return families.flatMap((some) => judged(some, FALSE_HINTS / Math.max(1, asking)));
}

function judged(
  some: readonly { question: Question; tried: ReturnType<typeof tryOut> }[],
  level: number,
): Comparison[] {
  const looked = some.map(({ tried: { p, least } }) => ({ p: p ?? 1, least: least ?? 1 }));
  const stands = standOut(looked, level);
  return some.map(({ question, tried: { least: _, ...one } }, i): Comparison => {
    if (one.difference === null) return { ...one, verdict: 'too-few', alsoDiffers: null };
    const matters = Math.abs(one.difference.value) >= MATTERS[one.of];
    const notedOf = (side: Question['a']) => side.map((each) => [...each.nearby(), ...ofTheDay(each.date)]);
    return {
      ...one,
      verdict: stands[i] && matters ? 'hint' : 'not-told-apart',
      alsoDiffers: alsoDiffers(notedOf(question.a), notedOf(question.b), question.given),
    };
  });
}

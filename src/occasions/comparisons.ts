import type { Comparison, Meal, NightAfter, Session } from '../model/occasions.ts';
import { standOut } from '../stats/many.ts';
import { mealQuestions } from './mealQuestions.ts';
import { movementQuestions } from './movementQuestions.ts';
import { type Question, type Tried, tryOut } from './sides.ts';

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
  nights: readonly NightAfter[],
  notedDays: ReadonlySet<string>,
): Comparison[] {
  const families = [movementQuestions(sessions, nights, notedDays), mealQuestions(meals)].map((questions: Question[]) =>
    questions.map(tryOut),
  );
  const asking = families.filter((tried) => tried.some(({ p }) => p !== null)).length;
  return families.flatMap((tried) => judged(tried, FALSE_HINTS / Math.max(1, asking)));
}

function judged(tried: readonly Tried[], level: number): Comparison[] {
  const looked = tried.map(({ p, least }) => ({ p: p ?? 1, least: least ?? 1 }));
  const stands = standOut(looked, level);
  return tried.map(({ least: _, ...one }, i): Comparison => {
    if (one.difference === null) return { ...one, verdict: 'too-few' };
    const matters = Math.abs(one.difference.value) >= MATTERS[one.of];
    return { ...one, verdict: stands[i] && matters ? 'hint' : 'not-told-apart' };
  });
}

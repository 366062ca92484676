import type { PregnancyGoals } from '../model/settings.ts';
import { readPregnancyGoals } from '../papers/pregnancyGoals.ts';
import { WrongUse } from './exits.ts';

/** A clinic's own goals in pregnancy as they were typed in. @throws WrongUse */
export function pregnancyGoalsOf(text: string): PregnancyGoals {
  const goals = readPregnancyGoals(text);
  if (!goals) throw new WrongUse('wrongPregnancyGoals', { value: text });
  return goals;
}

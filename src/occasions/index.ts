import type { LogWords } from '../model/logbook.ts';
import type { Comparison, Correction, Meal, NoteLog, Session } from '../model/occasions.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { compareAll } from './comparisons.ts';
import { findCorrections } from './corrections.ts';
import { inferMeals } from './inferred.ts';
import { findMeals, mealtimeInsulin } from './meals.ts';
import { nightsOf } from './nights.ts';
import { noteLog, writtenDays } from './noteLog.ts';
import { FIRST, findSessions } from './sessions.ts';
import { between, type Signal } from './signal.ts';
import { logReader } from './words.ts';

export type { Signal } from './signal.ts';

/** Everything that notes and readings tell together. */
export interface Occasions {
  meals: Meal[];
  sessions: Session[];
  corrections: Correction[];
  log: NoteLog;
  comparisons: Comparison[];
}

/** Lines the notes of a timeline up with its readings; `infer` adds rises that look like meals, marked so. A pure function; nothing is made up for what was not written down. */
export function findOccasions(signal: Signal, words: LogWords, infer = false): Occasions {
  const { timeline } = signal;
  const read = logReader(words);
  const nights = nightsOf(signal);
  const found = findMeals(signal, read);
  const { sessions, shortBouts } = findSessions(signal, read, found, nights);
  const meals = found.map((meal) => (leadsToExercise(meal, sessions) ? setApart(meal) : meal));
  const log = noteLog(timeline, meals, sessions, shortBouts);
  return {
    meals: infer ? [...meals, ...inferMeals(signal, found)].sort((a, b) => a.at - b.at) : meals,
    sessions,
    corrections: findCorrections(signal, mealtimeInsulin(timeline.notes, read), meals),
    log,
    comparisons: compareAll(meals, sessions, nights, writtenDays(timeline)),
  };
}

/** Food in the hour before exercise belongs to the exercise, and is no meal like the others. */
const leadsToExercise = (meal: Meal, sessions: readonly Session[]): boolean =>
  between(sessions, meal.at, meal.at + FIRST * MINUTE_MS).length > 0;

const setApart = (meal: Meal): Meal => ({ ...meal, unusable: [...meal.unusable, 'exercise'] });

import type { LogWords } from '../model/logbook.ts';
import type { OutcomeNotes } from '../model/notedBefore.ts';
import type { Comparison, Correction, Meal, Noted, NoteLog, Session } from '../model/occasions.ts';
import type { Remark } from '../model/remarks.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { besideMeals } from './besideMeals.ts';
import { compareAll } from './comparisons.ts';
import { findCorrections } from './corrections.ts';
import { dayStretches } from './dayStretches.ts';
import { inferMeals } from './inferred.ts';
import { type InsulinNote, insulinNotes } from './insulin.ts';
import { findMeals, mealtimeInsulin } from './meals.ts';
import { type NotedAt, notedAt, notedBetween, ofTheDay } from './noted.ts';
import { notedBefore } from './notedBefore.ts';
import { noteLog, writtenDays } from './noteLog.ts';
import { findRemarks } from './remarks.ts';
import { restDays } from './restDays.ts';
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
  before: OutcomeNotes[];
  remarks: Remark[];
  /** Insulin notes by what they stand for, those that none was taken left out. */
  insulin: InsulinNote[];
}

/** Lines the notes of a timeline up with its readings; `infer` adds rises that look like meals, marked so. A pure function; nothing is made up for what was not written down. */
export function findOccasions(signal: Signal, words: LogWords, infer = false): Occasions {
  const { timeline } = signal;
  const read = logReader(words);
  const found = findMeals(signal, read);
  const { sessions, shortBouts } = findSessions(signal, read, found);
  const alone = findCorrections(signal, mealtimeInsulin(timeline.notes, read), found);
  const noted = notedAt(timeline, sessions, alone, read);
  const corrections = alone.map((one) => ({ ...one, nearby: besideCorrection(one, noted) }));
  const meals = besideMeals(
    found.map((meal) => (leadsToExercise(meal, sessions) ? setApart(meal) : meal)),
    noted,
  );
  const notedDays = writtenDays(timeline);
  const stretches = dayStretches(signal, notedDays);
  const log = noteLog(timeline, meals, sessions, shortBouts);
  return {
    meals: infer ? [...meals, ...inferMeals(signal, found)].sort((a, b) => a.at - b.at) : meals,
    sessions,
    corrections,
    log,
    comparisons: compareAll(meals, sessions, restDays(signal, sessions, notedDays), noted),
    remarks: findRemarks(signal, read),
    insulin: insulinNotes(timeline.notes, read),
    before: notedBefore(stretches.days, stretches.events, noted),
  };
}

/** Food in the hour before exercise belongs to the exercise, and is no meal like the others. */
const leadsToExercise = (meal: Meal, sessions: readonly Session[]): boolean =>
  between(sessions, meal.at, meal.at + FIRST * MINUTE_MS).length > 0;

const setApart = (meal: Meal): Meal => ({ ...meal, unusable: [...meal.unusable, 'exercise'] });

/** The time in which insulin noted alone is looked at, and as long before it. */
const AROUND = 240;

const besideCorrection = ({ at, date }: Correction, noted: readonly NotedAt[]): Noted[] => [
  ...notedBetween(noted, at - AROUND * MINUTE_MS, at + AROUND * MINUTE_MS)
    .filter(({ id }) => id !== 'insulin' && id !== 'insulin-only')
    .map(({ id, name }) => ({ id, name })),
  ...ofTheDay(date),
];

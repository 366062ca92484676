import type { NoteKind } from '../model/input.ts';
import type { Slot } from '../model/logbook.ts';
import type { Meal, NoteLog, Session } from '../model/occasions.ts';
import type { Timeline } from '../model/timeline.ts';
import { medicationNoted } from './medication.ts';

/** What people write down themselves; sensors note the rest. */
const WRITTEN: readonly NoteKind[] = ['meal', 'insulin', 'exercise', 'medication', 'fingerstick', 'text'];

/** Days on which anything was written down. */
export function writtenDays({ days, notes }: Pick<Timeline, 'days' | 'notes'>): Set<string> {
  return new Set(notes.filter(({ kind }) => WRITTEN.includes(kind)).map(({ day }) => days[day]!.date));
}

/** How complete the log is: counts of what is there, never a word about what is not. */
export function noteLog(
  { days, notes }: Timeline,
  meals: readonly Meal[],
  sessions: readonly Session[],
  shortBouts: number,
): NoteLog {
  const written = notes.filter(({ kind }) => WRITTEN.includes(kind));
  const kinds = WRITTEN.map((kind) => ({ kind, notes: written.filter((note) => note.kind === kind) })).filter(
    (one) => one.notes.length > 0,
  );
  const mealDays: Partial<Record<Slot, number>> = {};
  for (const slot of new Set(meals.map((meal) => meal.slot))) {
    mealDays[slot] = new Set(meals.filter((meal) => meal.slot === slot).map(({ date }) => date)).size;
  }
  return {
    days: days.length,
    noted: writtenDays({ days, notes }).size,
    byKind: kinds.map((one) => ({
      kind: one.kind,
      days: new Set(one.notes.map(({ day }) => day)).size,
      notes: one.notes.length,
    })),
    byHour: kinds.map((one) => {
      const hours = new Array<number>(24).fill(0);
      for (const { timed, minute } of one.notes) if (timed) hours[Math.floor(minute / 60)]! += 1;
      return { kind: one.kind, hours };
    }),
    mealDays,
    medication: medicationNoted({ days, notes }),
    meals: meals.length,
    withCarbs: meals.filter(({ carbs }) => carbs !== null).length,
    late: meals.filter(({ late }) => late).length,
    sessions: sessions.length,
    withMinutes: sessions.filter(({ minutes }) => minutes !== null).length,
    shortBouts,
  };
}

import type { Meal, Session } from '../model/occasions.ts';
import type { Note } from '../model/timeline.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import { between, glucoseAt, type Signal, stretch } from './signal.ts';
import { nextSix, untilMorning } from './untilMorning.ts';
import type { LogReader } from './words.ts';

/** Bouts with no more than this between them are one session (ours). */
export const ONE_SESSION = 10;
/** Noted movement that adds up to less is no session (bouts of 10 minutes: WHO 2010, from memory; here ours). */
export const SHORTEST = 10;
/** More sessions a day than this are a device's record of all movement: then only long ones are sessions (ours). */
const BY_HAND = 2;
export const LONG = 30;
/** Food in so many minutes before the start counts as first. */
export const FIRST = 60;
/** So long after the end is still "soon after". */
export const SOON = 120;
/** Taken where no length was noted, for "while it lasted" only (ours). */
const UNKNOWN_LENGTH = 30;
const STEEP = 20;
/** Longer than this it is a remark, not a kind. */
const LONGEST_KIND = 32;

/** Notes of movement that go together. */
export interface Bout {
  notes: Note[];
  end: number;
  active: number;
  timed: boolean;
}

/** Exercise notes as sessions, and how many short bouts are none. */
export function findSessions(
  signal: Signal,
  read: LogReader,
  meals: readonly Meal[],
): { sessions: Session[]; shortBouts: number } {
  const bouts = boutsOf(signal.timeline.notes);
  const long = longEnough(bouts);
  return {
    sessions: long.map((bout) => session(signal, read, bout, meals)),
    shortBouts: bouts.length - long.length,
  };
}

/** Notes of movement with little between them, as one bout each. */
export function boutsOf(notes: readonly Note[]): Bout[] {
  const bouts: Bout[] = [];
  for (const note of notes) {
    if (note.kind !== 'exercise' || !note.timed) continue;
    const end = note.at + (note.minutes ?? 0) * MINUTE_MS;
    const last = bouts[bouts.length - 1];
    if (last && note.at - last.end <= ONE_SESSION * MINUTE_MS) {
      last.notes.push(note);
      last.end = Math.max(last.end, end);
      last.active += note.minutes ?? 0;
      last.timed &&= note.minutes !== undefined;
    } else bouts.push({ notes: [note], end, active: note.minutes ?? 0, timed: note.minutes !== undefined });
  }
  return bouts;
}

/** Which bouts are sessions: all that a person noted, the long ones of a device that records every movement. */
export function longEnough(bouts: readonly Bout[]): Bout[] {
  const some = bouts.filter(({ timed, active }) => !timed || active >= SHORTEST);
  const days = new Set(some.map(({ notes }) => notes[0]!.day)).size;
  if (some.length <= BY_HAND * days) return some;
  // A device that knows lengths leaves one out where there was none.
  const anyTimed = bouts.some(({ timed }) => timed);
  return some.filter(({ timed, active }) => (timed ? active >= LONG : !anyTimed));
}

function session(signal: Signal, read: LogReader, { notes, end, timed }: Bout, meals: readonly Meal[]): Session {
  const first = notes[0]!;
  const words = notes.map(({ label, text }) => `${label ?? ''} ${text ?? ''}`).join(' ');
  const eaten = between(meals, first.at - FIRST * MINUTE_MS, first.at);
  const lasted = timed ? end : Math.max(end, first.at + UNKNOWN_LENGTH * MINUTE_MS);
  const during = stretch(signal, first.at, lasted + 1);
  const soon = stretch(signal, first.at, lasted + SOON * MINUTE_MS);
  const height = (index: number) => (index < 0 ? null : mgPerDl(signal.heights[index]!));
  const carbs = eaten.flatMap((meal) => meal.carbs ?? []);
  return {
    at: first.at,
    date: signal.timeline.days[first.day]!.date,
    minute: first.minute,
    kind: kindOf(notes),
    minutes: timed ? (end - first.at) / MINUTE_MS : null,
    effort: read.effort(words),
    carbsFirst:
      eaten.length === 0 ? 'none-noted' : eaten.some(({ insulin }) => insulin.when !== 'none-noted') ? 'meal' : 'extra',
    carbs: carbs.length === 0 ? null : carbs.reduce((sum, one) => sum + one, 0),
    start: glucoseAt(signal, first.at),
    steepest: steepestFall(signal, during.first, during.end),
    lowestDuring: height(during.lowest),
    lowestSoon: height(soon.lowest),
    lowSoon: soon.low,
    untilMorning: untilMorning(signal, first.at, nextSix(signal.timeline, first.day, first.minute)),
  };
}

/** The first words written, up to a comma: what was done, without how hard. */
function kindOf(notes: readonly Note[]): string | null {
  const label = notes.find((note) => note.label !== undefined)?.label ?? '';
  const kind = label
    .normalize('NFC')
    .toLowerCase()
    .replace(/[,;(].*$/su, '')
    .replace(/\s+/g, ' ')
    .trim();
  return kind === '' || kind.length > LONGEST_KIND ? null : kind;
}

/** Largest fall over 20 minutes; null when no two readings lie so far apart. */
function steepestFall({ heights, timeline }: Signal, first: number, end: number): number | null {
  const { at } = timeline.readings;
  let most: number | null = null;
  let from = first;
  for (let i = first; i < end; i++) {
    while (at[i]! - at[from]! > STEEP * MINUTE_MS) from++;
    if (at[i]! - at[from]! < (STEEP - 5) * MINUTE_MS) continue;
    most = Math.max(most ?? 0, heights[from]! - heights[i]!);
  }
  return most;
}

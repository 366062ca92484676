import type { Note, Timeline } from '../model/timeline.ts';
import { boutsOf, longEnough } from '../occasions/sessions.ts';

/** A pump that changes its rate more often than this on a day has a course and no events; its signs are left out (ours). */
const RATES_A_DAY = 6;

const drawn = new WeakMap<Timeline, Note[]>();

/**
 * The notes that a day's picture has room for: of movement only what counts as a session, as one note each, where a device
 * records every step; of a pump's background the changes a person makes, not those a program makes every few minutes.
 */
export function drawnNotes(timeline: Timeline): Note[] {
  let notes = drawn.get(timeline);
  if (!notes) {
    notes = thinned(timeline.notes);
    drawn.set(timeline, notes);
  }
  return notes;
}

/** The notes of a day for a picture that tells a pump's background once a day. */
export const notesOfDay = (timeline: Timeline, day: number): Note[] => [
  ...drawnNotes(timeline).filter((note) => note.day === day && note.kind !== 'insulin-rate'),
  ...timeline.notes.filter((note) => note.day === day && note.kind === 'insulin-rate'),
];

/** How many movements have a sign, and how many have none because a device wrote down all of it. */
export interface Movement {
  shown: number;
  left: number;
}

export function movementOf({ notes }: Timeline): Movement {
  const bouts = boutsOf(notes.filter(({ kind, timed }) => kind === 'exercise' && timed));
  const shown = longEnough(bouts).length;
  return { shown, left: bouts.length - shown };
}

function thinned(all: readonly Note[]): Note[] {
  const movement = all.filter(({ kind, timed }) => kind === 'exercise' && timed);
  const bouts = boutsOf(movement);
  const long = longEnough(bouts);
  // Where all are sessions, a person wrote them down, and each stands as it was written.
  const merged =
    long.length === bouts.length
      ? movement
      : long.map(({ notes: [first, ...more], active }) =>
          more.length === 0 ? first! : { ...first!, ...(active > 0 ? { minutes: active } : {}) },
        );
  const rates = new Map<number, number>();
  for (const { kind, day } of all) if (kind === 'insulin-rate') rates.set(day, (rates.get(day) ?? 0) + 1);
  return [
    ...all.filter(({ kind, timed, day }) =>
      kind === 'exercise' ? !timed : kind !== 'insulin-rate' || rates.get(day)! <= RATES_A_DAY,
    ),
    ...merged,
  ].sort((a, b) => a.at - b.at);
}

import type { Correction, Noted, Session } from '../model/occasions.ts';
import type { Note, Timeline } from '../model/timeline.ts';
import { MINUTE_MS, weekdayOf } from '../time/calendar.ts';
import { mealtimeInsulin, SMALL_GRAMS } from './meals.ts';
import { between } from './signal.ts';
import type { LogReader } from './words.ts';

/** Something noted, from its time to its end. */
export interface NotedAt extends Noted {
  at: number;
  end: number;
}

/** Food noted from 9 in the evening to 3 at night is food at bedtime (ours). */
const BEDTIME = { from: 1260, to: 180 };

/**
 * Everything noted that may stand beside an occasion, in order of time. Food that is noted for lows follows glucose and
 * is no part of it; alarms follow glucose as well and are counted, never compared.
 */
export function notedAt(
  { notes, gaps }: Timeline,
  sessions: readonly Session[],
  corrections: readonly Correction[],
  read: LogReader,
): NotedAt[] {
  const one = (id: Noted['id'], at: number, name = '', minutes = 0): NotedAt => ({
    id,
    name,
    at,
    end: at + minutes * MINUTE_MS,
  });
  const found = [
    ...sessions.flatMap(({ at, minutes, kind }) => [
      one('exercise', at, '', minutes ?? 0),
      ...(kind === null ? [] : [one('exercise-kind', at, kind, minutes ?? 0)]),
    ]),
    ...mealtimeInsulin(notes, read).map(({ at }) => one('insulin', at)),
    ...corrections.map(({ at }) => one('insulin-only', at)),
    ...notes.flatMap((note): NotedAt[] => {
      if (!note.timed) return [];
      if (note.kind === 'alarm') return [one('alarm', note.at)];
      return note.kind === 'meal' ? foods(note, read).map(({ id, name }) => one(id, note.at, name)) : [];
    }),
    ...gaps.flatMap(({ kind, to }) => (kind === 'change' ? [one('first-sensor-day', to)] : [])),
  ];
  return found.sort((a, b) => a.at - b.at);
}

function foods({ label, amount, unit, minute }: Note, read: LogReader): Noted[] {
  if (label !== undefined && read.treatsLow(label)) return [];
  if (amount !== undefined && (unit ?? 'g') === 'g' && amount < SMALL_GRAMS) return [];
  const name = label === undefined ? null : read.food(label);
  const late = minute >= BEDTIME.from || minute < BEDTIME.to;
  return [
    ...(name === null ? [] : [{ id: 'food' as const, name }]),
    ...(late ? [{ id: 'bedtime-food' as const, name: '' }] : []),
  ];
}

/** What is known of a day without a note. */
export const ofTheDay = (date: string): Noted[] => (weekdayOf(date) >= 6 ? [{ id: 'weekend', name: '' }] : []);

/** Those noted from one instant up to, but not at, another. */
export const notedBetween = (all: readonly NotedAt[], from: number, to: number): NotedAt[] =>
  between(all, from, to - 1);

import type { Instant } from '../model/glucose.ts';
import type { Issue, NoteEntry, ReadFile } from '../model/input.ts';
import type { Day, Note } from '../model/timeline.ts';
import { noteOf } from '../readers/notes/rowNotes.ts';
import { MINUTE_MS, midnightBefore, minuteOfDay } from '../time/calendar.ts';
import { firstInstantFrom, instantsOf, type LocalClock, wallAt } from '../time/clock.ts';
import { NO_OFFSET } from '../time/offset.ts';
import { DUPLICATE, KEPT, SET_ASIDE } from './placed.ts';
import type { ClockChoice } from './shownClock.ts';

export interface PlacedNotes {
  /** Notes of the period, in order of time. */
  notes: Note[];
  outside: number;
  /** KEPT, DUPLICATE or SET_ASIDE, one list a file, one entry a note. */
  lost: Uint8Array[];
  issues: Issue[];
}

/**
 * Puts the notes of all files on the days. A note that says the same as an earlier one at the same time is a
 * duplicate. A note in a doubled hour takes the first pass, one in a skipped hour is set aside. A note without a time
 * belongs to its day and stands at the day's start.
 */
export function placeNotes(files: ReadFile[], clock: LocalClock, by: ClockChoice['by'], days: Day[]): PlacedNotes {
  const placed: PlacedNotes = { notes: [], outside: 0, lost: [], issues: [] };
  const seen = new Map<string, { first: NoteEntry; said?: Set<string> }>();
  let offsets = 0;
  for (const { notes } of files) {
    const lost = new Uint8Array(notes.length);
    placed.lost.push(lost);
    notes.forEach((note, n) => {
      const at = instantOf(note, clock, by);
      if (by === 'written' && note.timed && note.offset !== NO_OFFSET) offsets++;
      if (at === undefined) {
        lost[n] = SET_ASIDE;
        placed.issues.push({ code: 'skipped-hour-note', level: 'warning', origin: note.origin });
        return;
      }
      // Few notes share even this much: only those are compared whole.
      const brief = `${at} ${note.kind} ${note.amount}`;
      const alike = seen.get(brief);
      if (alike) {
        alike.said ??= new Set([sayingOf(alike.first)]);
        if (alike.said.has(sayingOf(note))) {
          lost[n] = DUPLICATE;
          return;
        }
        alike.said.add(sayingOf(note));
      } else seen.set(brief, { first: note });
      lost[n] = KEPT;
      const day = dayOf(at, days);
      if (day < 0) placed.outside++;
      else placed.notes.push(onDay(note, at, day, minuteOfDay(wallAt(clock, at))));
    });
  }
  if (offsets > 0)
    placed.issues.push({ code: 'note-offsets', level: 'warning', count: offsets, question: { of: 'zone' } });
  placed.notes.sort(
    (a, b) =>
      a.at - b.at || Number(a.timed) - Number(b.timed) || compare(a.kind, b.kind) || compare(sayingOf(a), sayingOf(b)),
  );
  return placed;
}

/** Not spread, for the reason told at `noteOf`. */
function onDay(entry: NoteEntry, at: Instant, day: number, minute: number): Note {
  const note = noteOf(entry, entry.kind, entry) as Note;
  note.at = at;
  note.day = day;
  note.minute = minute;
  return note;
}

/**
 * With a zone, or beside readings with offsets, an offset makes an instant. A note without one keeps the wearer's wall
 * clock, so that it stays beside the meal it tells of.
 */
function instantOf(note: NoteEntry, clock: LocalClock, by: ClockChoice['by']): Instant | undefined {
  if (!note.timed) return firstInstantFrom(clock, midnightBefore(note.wall));
  if (by !== 'written' && note.offset !== NO_OFFSET) return (note.wall - note.offset * MINUTE_MS) as Instant;
  const [first] = instantsOf(clock, note.wall);
  // Only a zone knows that an hour was skipped; between two offsets of a traveller the hour just was not seen.
  return first ?? (by === 'zone' ? undefined : firstInstantFrom(clock, note.wall));
}

function dayOf(at: number, days: Day[]): number {
  if (at < days[0]!.start) return -1;
  let low = 0;
  let high = days.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (days[middle]!.start <= at) low = middle;
    else high = middle - 1;
  }
  return at < days[low]!.start + days[low]!.minutes * MINUTE_MS ? low : -1;
}

/** What a note says, its time apart. */
function sayingOf({ timed, kind, amount, unit, label, minutes, text }: NoteEntry): string {
  return JSON.stringify([timed, kind, amount, unit, label, minutes, text]);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

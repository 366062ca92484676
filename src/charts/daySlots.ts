import type { Note, Timeline } from '../model/timeline.ts';
import { DAY_MINUTES } from '../time/calendar.ts';
import { drawnNotes } from './drawnNotes.ts';

/** A stretch of a day's clock: its readings, the lowest and the highest by their place among all (-1: none), and its notes. */
export interface DaySlot {
  /** Minute of the day at which it begins. */
  minute: number;
  readings: number;
  lowest: number;
  highest: number;
  notes: Note[];
}

/** A day in stretches of so many minutes of the clock on the wall; none where the day holds nothing. */
export function daySlots(timeline: Timeline, index: number, minutes: number): DaySlot[] {
  const { mgdl, limit, minute } = timeline.readings;
  const day = timeline.days[index]!;
  const notes = drawnNotes(timeline).filter((note) => note.day === index && note.timed);
  if (day.to === day.from && notes.length === 0) return [];
  const slots = Array.from(
    { length: Math.ceil(DAY_MINUTES / minutes) },
    (_, i): DaySlot => ({ minute: i * minutes, readings: 0, lowest: -1, highest: -1, notes: [] }),
  );
  // A reading beyond the sensor's range lies beyond all others, also where its bound is not known.
  const height = (i: number): number =>
    limit[i] === 0 ? mgdl[i]! : limit[i]! < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  for (let i = day.from; i < day.to; i += 1) {
    const slot = slots[Math.floor(minute[i]! / minutes)]!;
    slot.readings += 1;
    if (slot.lowest < 0 || height(i) < height(slot.lowest)) slot.lowest = i;
    if (slot.highest < 0 || height(i) > height(slot.highest)) slot.highest = i;
  }
  for (const note of notes) slots[Math.floor(note.minute / minutes)]!.notes.push(note);
  return slots;
}

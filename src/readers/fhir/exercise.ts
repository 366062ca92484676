import type { NoteEntry } from '../../model/input.ts';
import { type Json, listIn, numberIn, objectIn, textIn } from '../json/fields.ts';
import { codeName, conceptText, isIntensity, isUsable, observationKind } from './codes.ts';
import type { FhirReading } from './reading.ts';

const TO_MINUTES = new Map([
  ['min', 1],
  ['h', 60],
  ['s', 1 / 60],
]);

/** What was done, how long and how hard, from the value, the components, the members, or the period. */
export function exerciseOf(reading: FhirReading, body: Json): { label?: string; minutes?: number; text?: string } {
  const out: { label?: string; minutes?: number; text?: string } = {};
  const label = conceptText(objectIn(body, 'valueCodeableConcept')) || textIn(body, 'valueString');
  if (label !== '') out.label = label;
  let total = minutesOf(objectIn(body, 'valueQuantity'));
  let parts: number | undefined;
  let lasting: number | undefined;
  for (const part of [...listIn(body, 'component'), ...membersOf(reading, body)]) {
    const code = objectIn(part, 'code');
    const kind = observationKind(code);
    const words = conceptText(objectIn(part, 'valueCodeableConcept'));
    const minutes = minutesOf(objectIn(part, 'valueQuantity'));
    if (kind === 'duration' && minutes !== undefined) {
      // Minutes of moderate and of vigorous exercise add up, unless the whole is given.
      if (codeName(code) === '55411-3') total = minutes;
      else parts = (parts ?? 0) + minutes;
    } else if (kind === 'exercise') {
      if (words !== '') out.label = words;
      lasting ??= reading.minutesOf(objectIn(part, 'effectivePeriod'));
    } else if (isIntensity(code) && words !== '') out.text = words;
  }
  const minutes = total ?? parts ?? reading.minutesOf(objectIn(body, 'effectivePeriod')) ?? lasting;
  if (minutes !== undefined) out.minutes = minutes;
  return out;
}

/** The Observations an exercise names as its members: told with it, not beside it. */
export function membersOf(reading: FhirReading, body: Json): Json[] {
  if (observationKind(body.code) !== 'exercise') return [];
  return listIn(body, 'hasMember')
    .map((member) => reading.resolve(textIn(member, 'reference'), body))
    .filter((member) => member !== undefined)
    .filter((member) => isUsable(textIn(member, 'status')) && listIn(member, 'hasMember').length === 0);
}

/** Joins an exercise without its length to a length without its exercise at the same time; gives the rows that were joined. */
export function joinAtOneTime(notes: NoteEntry[]): { notes: NoteEntry[]; joined: number[] } {
  const named = new Map<number, NoteEntry>();
  for (const note of notes) {
    if (note.kind === 'exercise' && note.label !== undefined && note.minutes === undefined && note.timed)
      named.set(note.wall, note);
  }
  const joined: number[] = [];
  const kept = notes.filter((note) => {
    const partner = named.get(note.wall);
    const bare = note.kind === 'exercise' && note.label === undefined && note.minutes !== undefined;
    if (!bare || !partner || partner.offset !== note.offset || partner.minutes !== undefined) return true;
    partner.minutes = note.minutes!;
    joined.push(note.row);
    return false;
  });
  return { notes: kept, joined };
}

function minutesOf(quantity: Json | undefined): number | undefined {
  const value = numberIn(quantity, 'value');
  const factor = TO_MINUTES.get(textIn(quantity, 'code') || textIn(quantity, 'unit'));
  return value === undefined || factor === undefined ? undefined : value * factor;
}

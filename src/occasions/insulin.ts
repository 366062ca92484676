import type { LongHighs } from '../model/highs.ts';
import type { Note } from '../model/timeline.ts';
import type { LogReader } from './words.ts';

/** A dose that no name tells to act for long, one that a name does tell so, or a pump's background. */
export type InsulinKind = 'dose' | 'long-acting' | 'rate';

/** What an insulin note stands for; null where none was taken (an amount of 0), or it is another note. */
function insulinKind(note: Pick<Note, 'kind' | 'amount' | 'label'>, read: LogReader): InsulinKind | null {
  if (note.amount === 0) return null;
  if (note.kind === 'insulin-rate') return 'rate';
  if (note.kind !== 'insulin') return null;
  return note.label !== undefined && read.longActing(note.label) ? 'long-acting' : 'dose';
}

export interface InsulinNote {
  note: Note;
  is: InsulinKind;
}

/** Insulin notes by what they stand for, those that none was taken left out. */
export const insulinNotes = (notes: readonly Note[], read: LogReader): InsulinNote[] =>
  notes.flatMap((note) => {
    const is = insulinKind(note, read);
    return is === null ? [] : [{ note, is }];
  });

/** Which insulin that runs all day is noted. */
export function basalOf(notes: readonly InsulinNote[]): LongHighs['basal'] {
  const [long, rates] = (['long-acting', 'rate'] as const).map((kind) => notes.some(({ is }) => is === kind));
  return long ? (rates ? 'both' : 'long-acting') : rates ? 'rates' : 'none';
}

/** How insulin is told: doses where any are noted, apart from what runs all day; that alone where no dose is. */
export const kindsOf = (doses: boolean, basal: LongHighs['basal']): 'doses' | 'apart' | 'basal' | 'none' =>
  doses ? (basal === 'none' ? 'doses' : 'apart') : basal === 'none' ? 'none' : 'basal';

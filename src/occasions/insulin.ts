import type { Note } from '../model/timeline.ts';
import type { LogReader } from './words.ts';

/** A dose that no name tells to act for long, one that a name does tell so, or a pump's background. */
export type InsulinKind = 'dose' | 'long-acting' | 'rate';

/** What an insulin note stands for; null where none was taken (an amount of 0), or it is another note. */
export function insulinKind(note: Pick<Note, 'kind' | 'amount' | 'label'>, read: LogReader): InsulinKind | null {
  if (note.amount === 0) return null;
  if (note.kind === 'insulin-rate') return 'rate';
  if (note.kind !== 'insulin') return null;
  return note.label !== undefined && read.longActing(note.label) ? 'long-acting' : 'dose';
}

import type { Choice, ColumnAccount, PersonMark, ReadSettings } from '../model/input.ts';
import type { IssueBook } from './book.ts';
import type { Entries } from './entries.ts';
import type { Above } from './evidence/above.ts';
import type { Hints } from './hints.ts';
import type { Records } from './table/records.ts';

/** What all tables of a file share while it is read. */
export interface Reading {
  file: string;
  records: Records;
  settings: ReadSettings;
  hints: Hints;
  book: IssueBook;
  choices: Choice[];
  entries: Entries;
  /** Zones named, each with the line that named it first; 0 for a layout. */
  zones: Map<string, number>;
  /** Everything that says whose file it is. */
  marks: PersonMark[];
  /** What the lines above and below the tables say. */
  above: Above;
  columns: ColumnAccount[];
}

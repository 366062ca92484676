import type { Choice, ReadSettings } from '../model/input.ts';
import type { IssueBook } from './book.ts';
import type { OrderHint } from './column-order.ts';
import type { Entries } from './entries.ts';
import type { Records } from './records.ts';

/** What all tables of a file share while it is read. */
export interface Reading {
  file: string;
  records: Records;
  settings: ReadSettings;
  hint: OrderHint | undefined;
  book: IssueBook;
  choices: Choice[];
  entries: Entries;
  zones: Set<string>;
  persons: Set<string>;
}

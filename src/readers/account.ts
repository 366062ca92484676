import { fingerprint } from '../bytes/hash.ts';
import type { Choice, ColumnAccount, Input, PersonMark, ReadFile } from '../model/input.ts';
import type { IssueBook } from './book.ts';
import { type Entries, newEntries } from './entries.ts';
import { courseOf } from './notes/course.ts';

/** What a reader collected of one input; what it left out is empty. */
interface Collected {
  book: IssueBook;
  choices?: Choice[];
  entries?: Entries;
  persons?: Iterable<string>;
  marks?: PersonMark[];
  columns?: ColumnAccount[];
}

/** The account of one input, of the given kind. */
export function accountOf(
  { name, bytes }: Input,
  kind: string,
  { book, choices = [], entries = newEntries(0, 0), persons = [], marks, columns }: Collected,
): ReadFile {
  return {
    name,
    kind,
    hash: fingerprint(bytes),
    choices,
    issues: book.list(),
    faults: book.faults(),
    readings: entries.readings(),
    notes: courseOf(entries.notes),
    fates: entries.fates,
    persons: [...persons],
    ...(marks ? { marks } : {}),
    ...(columns ? { columns } : {}),
  };
}

import type { Choice, ColumnAccount, PersonMark, ReadSettings } from '../model/input.ts';
import { type Layout, parseLayout } from '../schemas/layout.ts';
import type { IssueBook } from './book.ts';
import type { Entries } from './entries.ts';
import type { Above } from './evidence/above.ts';
import type { Hints } from './hints.ts';
import type { Records } from './table/records.ts';
import type { DayAbove } from './times/dayAbove.ts';
import type { DaySpan } from './times/yearDays.ts';

/** Settings whose layout was looked at, once for all files: a layout, or what is wrong with it. */
export interface CheckedSettings extends Omit<ReadSettings, 'layout'> {
  layout?: Layout;
  problems?: string[];
}

export function checkSettings({ layout, ...settings }: ReadSettings): CheckedSettings {
  if (layout === undefined) return settings;
  const parsed = parseLayout(layout);
  return parsed.ok ? { ...settings, layout: parsed.layout } : { ...settings, problems: parsed.problems };
}

/** What all tables of a file share while it is read. */
export interface Reading {
  file: string;
  records: Records;
  settings: CheckedSettings;
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
  /** How the table above ended, where dates stand only on the first row of a day. */
  dayAbove?: DayAbove;
  /** Days of a table whose dates put the day between year and month. */
  yearDays?: DaySpan;
}

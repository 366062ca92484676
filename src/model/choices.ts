import type { DateOrder, Detail } from './detail.ts';
import type { GlucoseUnit } from './glucose.ts';

type Evidence<Is extends Detail['is']> = Extract<Detail, { is: Is }>;

/** What each choice settles (`value`) and what in the file may have decided it (`evidence`). Never a sentence. */
interface Settles {
  encoding: [TextEncoding, 'json' | 'laid-out' | 'byte-order-mark' | 'valid-utf-8' | 'zero-bytes' | 'not-utf-8'];
  /** The mark itself. */
  delimiter: [',' | ';' | '|' | 'tab' | 'blanks' | 'pairs', 'fields' | 'sep-line' | 'laid-out'];
  /** The line of the column names. */
  header: [number | 'none', 'by-content'];
  /** What each column means, by the names of roles in schemas/layout.ts. */
  columns: [{ name: string; role: string }[], never];
  clock: [ClockForm, 'named' | 'both-named' | 'every-midnight' | 'times-without-offset'];
  'date-order': [DateOrder, 'at-line' | 'same-date' | 'other-order-future' | 'day-steps' | 'named'];
  /** Rows whose date stands in a row above. */
  'date-carried': [number, 'named'];
  /** Days that stand as headings above the rows of their times. */
  'day-headings': [number, never];
  /** When the time begins that a column counts, as written. */
  start: [string, 'line'];
  /** Of the first of dates that say none. */
  year: [number, never];
  'serial-dates': [1900 | 1904, 'other-count-future'];
  'half-of-day': ['row-order' | 'named-column', 'named'];
  'decimal-mark': ['.' | ',', 'cells'];
  unit: [
    GlucoseUnit | 'both',
    (
      | 'named'
      | 'line'
      | 'unit-in-rows'
      | 'unit-text'
      | 'ucum'
      | 'no-number'
      | 'values-with-decimals'
      | 'values-whole'
      | 'values-above'
    ),
  ];
  'glucose-kind': ['sensor' | 'finger-stick', 'minutes-between' | 'few-rows'];
  /** The column used of two that say the same. */
  values: [string, 'same-of'];
  layout: ['columns', never];
  /** IANA name. */
  zone: [string, 'named' | 'tz-code'];
  /** `+02:00`. */
  offset: [string, 'named' | 'at-line'];
}

export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export type ClockForm = 'one-column' | 'two-columns' | 'dates-only' | 'seconds' | 'millis' | 'serial' | 'utc';

export type ChoiceId = keyof Settles;

export interface ChoiceOf<Id extends ChoiceId> {
  id: Id;
  value: Settles[Id][0];
  by: 'user' | 'file' | 'default';
  evidence?: Evidence<Settles[Id][1]>;
}

/** A decision about how to read a file, and who made it. */
export type Choice = { [Id in ChoiceId]: ChoiceOf<Id> }[ChoiceId];

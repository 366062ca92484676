import type { GlucoseUnit } from './glucose.ts';

/**
 * Something a reader worked out, told as data. Its words stand in `understood` of templates/words under `is`, each field
 * a parameter of the same name: numbers are spoken, `line` never grouped, `order` and `role` are words of ours, and every
 * other text is a file's own and shown as it stands.
 */
export type Detail =
  | { [Name in Plain]: { is: Name } }[Plain]
  | { is: 'line'; line: number }
  /** Names and numbers of a file, with the line they stand on. */
  | { is: 'at-line'; text: string; line: number }
  | { is: 'row-at'; at: string; file: string; line: number }
  | { is: 'zone-row'; zone: string; at: string; file: string; line: number }
  | { is: 'reading-at'; reading: string; file: string; line: number }
  | { is: 'named'; name: string }
  | { is: 'role'; role: string }
  | { is: 'column'; name: string; role: string }
  | { is: 'column-cell'; name: string; text: string }
  | { is: 'both-named'; name: string; other: string }
  | { is: 'fields'; fields: number; rows: number; of: number }
  | { is: 'day-steps'; steps: number; of: number }
  | { is: 'cells'; cells: number; of: number }
  | { is: 'minutes'; minutes: number }
  | { is: 'minutes-between'; minutes: number }
  | { is: 'times-without-offset'; count: number }
  | { is: 'same-of'; name: string; same: number; of: number }
  | ValuesSeen
  | ({ is: 'values-before'; value: number; line: number } & Spread)
  /** One number in both units: mg/dL with what it would be in mmol/L, and the other way round. */
  | { is: 'either-unit'; value: number; line: number; mmol: number; mgdl: number }
  | { is: 'range'; low: number; high: number; unit: GlucoseUnit }
  | { is: 'order-of'; order: DateOrder; name: string }
  | { is: 'order-span'; order: DateOrder; from: string; to: string }
  | { is: 'date-read'; text: string; line: number; date: string; order: DateOrder; from: string; to: string }
  | { is: 'serial-read'; year: 1900 | 1904; serial: number; line: number; date: string }
  | { is: 'half-read'; line: number; early: string; late: string }
  /** From the first to the last day, as YYYY-MM-DD. */
  | { is: 'days'; from: string; to: string }
  /** A number and words that stand in cells of one column. */
  | { is: 'both-cells'; number: string; words: string }
  | { is: 'clock-at'; at: string; clock: string }
  /** The rows that share a word, and the range of their values. */
  | { is: 'group'; word: string; rows: number; low: number; high: number }
  | { is: 'bare-group'; word: string; rows: number }
  /** The middle of a series in both units. */
  | { is: 'middle-read'; low: number; high: number; value: number; mmol: number; mgdl: number }
  | { is: 'in-unit'; value: number; unit: GlucoseUnit }
  | { is: 'file-rows'; file: string; rows: number }
  | { is: 'lost'; lost: number; of: number };

/** How many numbers there are, and between which they lie. */
interface Spread {
  count: number;
  low: number;
  high: number;
}
export type ValuesSeen =
  | ({ is: 'values-seen' } & Spread)
  | ({ is: 'values-with-decimals' } & Spread)
  | ({ is: 'values-whole' } & Spread)
  | ({ is: 'values-above' } & Spread);

export type DateOrder = 'day-first' | 'month-first' | 'year-first';

/** What carries no data besides its name. */
export type Plain =
  | DateOrder
  | 'by-content'
  | 'byte-order-mark'
  | 'every-midnight'
  | 'few-rows'
  | 'json'
  | 'laid-out'
  | 'no-number'
  | 'no-period'
  | 'no-reason'
  | 'no-status'
  | 'not-utf-8'
  | 'other-count-future'
  | 'other-order-future'
  | 'same-date'
  | 'sep-line'
  | 'tab'
  | 'tz-code'
  | 'ucum'
  | 'unit-in-rows'
  | 'unit-text'
  | 'valid-utf-8'
  | 'zero-bytes'
  | NotText
  | ValueKind;

/** What a file is that holds no text. */
export type NotText =
  | 'zip-archive'
  | 'gzip-archive'
  | 'pdf-document'
  | 'picture'
  | 'old-workbook'
  | 'utf-32'
  | 'binary-data';

/** Kinds of value that a settings file asks for, as JSON knows them. */
export type ValueKind = 'json-string' | 'json-number' | 'json-boolean' | 'json-list' | 'json-object' | 'json-other';

/** What is shown of something found or expected: a text of the file (or a mark, a unit, a zone) as it stands, or data. */
export type Shown = string | number | Detail | readonly string[] | readonly Detail[];

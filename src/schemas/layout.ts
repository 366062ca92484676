import { list, MOST_TOLD, named, oneOf, type Place, shaped, text, whole, yesOrNo } from './checks.ts';

/** What a column can mean. `glucose` leaves sensor or finger stick open; `value` depends on the row's kind. */
export const ROLES = [
  'time',
  'date',
  'clock',
  'offset',
  'sensor',
  'glucose',
  'fingerstick',
  'calibration',
  'value',
  'unit',
  'kind',
  'insulin',
  'insulin-name',
  'carbohydrate',
  'food',
  'meal',
  'exercise',
  'minutes',
  'intensity',
  'medication',
  'medication-dose',
  'note',
  'alarm',
  'sensor-event',
  'person',
  'ignore',
] as const;

export type Role = (typeof ROLES)[number];

/** One table: where it stands and what its cells mean. */
export interface TableLayout {
  /** Physical line of the column names, from 1; 0 = the table has none. */
  headerLine?: number | undefined;
  /** First line of data, when it does not follow the names at once (a row of units, or no names at all). */
  firstLine?: number | undefined;
  decimalMark?: '.' | ',' | undefined;
  unit?: 'mg/dL' | 'mmol/L' | undefined;
  dateOrder?: 'day-first' | 'month-first' | 'year-first' | undefined;
  /** Its hours are those of a whole day, although none of them is past 12. */
  clock?: '24-hour' | undefined;
  /** First year of a spreadsheet's day numbers. */
  serialDates?: 1900 | 1904 | undefined;
  /** Column name as written, or `#3` for the third, to its meaning. Columns left out are ignored. */
  columns?: Record<string, Role | ColumnLayout> | undefined;
}

export interface ColumnLayout {
  role: Role;
  unit?: string | undefined;
  /** The kind all its rows share, e.g. of insulin; shown as written. */
  label?: string | undefined;
  /** Its times are UTC although the cells do not say so. */
  utc?: boolean | undefined;
}

/** How to read one kind of delimited text: written by a user, or reported by the reader as what it settled on. */
export interface Layout extends TableLayout {
  encoding?: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252' | undefined;
  delimiter?: ',' | ';' | '\t' | '|' | undefined;
  /** IANA name of the zone the clock was in. */
  timezone?: string | undefined;
  /** Several tables in one file, one entry each, in file order. */
  tables?: TableLayout[] | undefined;
}

const role = oneOf(...ROLES);
const columnShape = {
  role,
  unit: text(0, 20),
  label: text(0, 80),
  utc: yesOrNo,
} satisfies Record<keyof ColumnLayout, Place>;
const parts = shaped(columnShape, ['role']);
const column: Place = (value, at) => (typeof value === 'object' ? parts(value, at) : role(value, at));

const tableShape = {
  headerLine: whole(0),
  firstLine: whole(1),
  decimalMark: oneOf('.', ','),
  unit: oneOf('mg/dL', 'mmol/L'),
  dateOrder: oneOf('day-first', 'month-first', 'year-first'),
  clock: oneOf('24-hour'),
  serialDates: oneOf(1900, 1904),
  columns: named(column),
} satisfies Record<keyof TableLayout, Place>;

const layoutShape = {
  encoding: oneOf('utf-8', 'utf-16le', 'utf-16be', 'windows-1252'),
  delimiter: oneOf(',', ';', '\t', '|'),
  timezone: text(1, 60),
  ...tableShape,
  tables: list(shaped(tableShape), 1),
} satisfies Record<keyof Layout, Place>;
const fits = shaped(layoutShape);

/** So many letters of one mistake are told. */
const LETTERS = 200;

/**
 * Checks a parsed JSON layout. Unknown keys and words are problems, each with its place and what stands there. By hand:
 * readers ask for it in every run, and loading zod would cost more than most of them take to read.
 */
export function parseLayout(json: unknown): { ok: true; layout: Layout } | { ok: false; problems: string[] } {
  const problems = fits(json, '');
  if (problems.length === 0) return { ok: true, layout: json as Layout };
  return { ok: false, problems: problems.slice(0, MOST_TOLD).map((problem) => problem.slice(0, LETTERS)) };
}

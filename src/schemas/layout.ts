import * as z from 'zod';
import './jitless.ts';
import { dateOrder, glucoseUnit } from './parts.ts';
import { check } from './problems.ts';

/**
 * What a column can mean. `half` says before or after noon, `world` is world time beside the wearer's own. `glucose` leaves
 * sensor or finger stick open; `value` depends on the row's kind; `mixed` holds
 * readings as numbers and notes as words; `nutrient` is protein, fat, fibre or energy of food, kept as words.
 */
export const ROLES = [
  'time',
  'date',
  'clock',
  'half',
  'world',
  'offset',
  'sensor',
  'glucose',
  'fingerstick',
  'calibration',
  'value',
  'mixed',
  'unit',
  'kind',
  'insulin',
  'insulin-rate',
  'insulin-name',
  'carbohydrate',
  'nutrient',
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

/** What a word in a column of kinds can say about its rows; the words of ROLES, where they name a kind of row. */
export const KINDS = [
  'sensor',
  'glucose',
  'fingerstick',
  'calibration',
  'insulin',
  'insulin-rate',
  'carbohydrate',
  'exercise',
  'medication',
  'note',
  'alarm',
  'sensor-event',
  'ignore',
] as const;

export type KindRole = (typeof KINDS)[number];

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
  /** When the time begins that a column counts, as `2026-03-17 06:10`, where the file does not say it. */
  start?: string | undefined;
  /** Of the first row, where dates say no year. */
  year?: number | undefined;
  /** First year of a spreadsheet's day numbers. */
  serialDates?: 1900 | 1904 | undefined;
  /** Column name as written, or `#3` for the third, to its meaning. Columns left out are ignored. */
  columns?: Record<string, Role | ColumnLayout> | undefined;
  /** What single columns mean; the others are found as they are without a layout. */
  meanings?: Record<string, Role | ColumnLayout> | undefined;
  /** What the words of the column of kinds mean, each as it stands in the file. */
  kinds?: Record<string, KindRole> | undefined;
  /** The unit changes within the file: each part is in the unit that the size of its numbers shows. */
  units?: 'by-size' | undefined;
  /** A person has looked at readings that look like none, and says that they are. */
  series?: 'confirmed' | undefined;
}

export interface ColumnLayout {
  role: Role;
  unit?: string | undefined;
  /** The kind all its rows share, e.g. of insulin; shown as written. */
  label?: string | undefined;
  /** Its times are UTC although the cells do not say so. */
  utc?: boolean | undefined;
  /** How far its times are from world time although the cells do not say so, as `+02:00`. */
  offset?: string | undefined;
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

function shape() {
  const role = z.enum(ROLES);
  const column = z.union([
    role,
    z.strictObject({
      role,
      unit: z.string().max(20).optional(),
      label: z.string().max(80).optional(),
      utc: z.boolean().optional(),
      offset: z
        .string()
        .regex(/^[+-](?:0\d|1[0-4]):[0-5]\d$/)
        .optional(),
    }),
  ]) satisfies z.ZodType<Role | ColumnLayout>;

  /** zod leaves a member of this name out unseen. */
  const withoutProto = z.unknown().refine((value) => !(value instanceof Object && Object.hasOwn(value, '__proto__')));

  const table = z.strictObject({
    headerLine: z.int().min(0).optional(),
    firstLine: z.int().min(1).optional(),
    decimalMark: z.enum(['.', ',']).optional(),
    unit: glucoseUnit.optional(),
    dateOrder: dateOrder.optional(),
    clock: z.literal('24-hour').optional(),
    start: z
      .string()
      .regex(/^\d{4}-\d\d-\d\d[ T]\d\d:\d\d(?::\d\d)?$/)
      .optional(),
    year: z.int().min(1999).max(2999).optional(),
    serialDates: z.literal([1900, 1904]).optional(),
    columns: withoutProto.pipe(z.record(z.string(), column)).optional(),
    meanings: withoutProto.pipe(z.record(z.string(), column)).optional(),
    kinds: withoutProto.pipe(z.record(z.string(), z.enum(KINDS))).optional(),
    units: z.literal('by-size').optional(),
    series: z.literal('confirmed').optional(),
  }) satisfies z.ZodType<TableLayout>;

  return table.extend({
    encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252']).optional(),
    delimiter: z.enum([',', ';', '\t', '|']).optional(),
    timezone: z.string().min(1).max(60).optional(),
    tables: z.array(table).min(1).optional(),
  }) satisfies z.ZodType<Layout>;
}

let ready: ReturnType<typeof shape> | undefined;
/** Made when first asked for: hardly any run is given a layout. */
export const layout = (): ReturnType<typeof shape> => (ready ??= shape());

/** Layouts that were checked here, so that the door's check is the only one, however many files it reads. */
const CHECKED = new WeakSet<object>();

/** Checks a parsed JSON layout. Unknown keys and words are problems, each with its place and what stands there. */
export function parseLayout(json: unknown): { ok: true; layout: Layout } | { ok: false; problems: string[] } {
  if (isChecked(json)) return { ok: true, layout: json };
  const checked = check(layout(), json, 'layout');
  if (!checked.ok) return checked;
  CHECKED.add(checked.value);
  return { ok: true, layout: checked.value };
}

const isChecked = (json: unknown): json is Layout => json instanceof Object && CHECKED.has(json);

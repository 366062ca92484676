import * as z from 'zod';

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

const role = z.enum(ROLES);
const column = z.union([
  role,
  z.strictObject({
    role,
    unit: z.string().max(20).optional(),
    /** The kind all its rows share, e.g. of insulin; shown as written. */
    label: z.string().max(80).optional(),
    /** Its times are UTC although the cells do not say so. */
    utc: z.boolean().optional(),
  }),
]);

const tableShape = {
  /** Physical line of the column names, from 1; 0 = the table has none. */
  headerLine: z.int().min(0).optional(),
  /** First line of data, when it does not follow the names at once (a row of units, or no names at all). */
  firstLine: z.int().min(1).optional(),
  decimalMark: z.enum(['.', ',']).optional(),
  unit: z.enum(['mg/dL', 'mmol/L']).optional(),
  dateOrder: z.enum(['day-first', 'month-first', 'year-first']).optional(),
  /** Its hours are those of a whole day, although none of them is past 12. */
  clock: z.literal('24-hour').optional(),
  /** First year of a spreadsheet's day numbers. */
  serialDates: z.union([z.literal(1900), z.literal(1904)]).optional(),
  /** Column name as written, or `#3` for the third, to its meaning. Columns left out are ignored. */
  columns: z.record(z.string(), column).optional(),
};

const table = z.strictObject(tableShape);

const layoutSchema = z.strictObject({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252']).optional(),
  delimiter: z.enum([',', ';', '\t', '|']).optional(),
  /** IANA name of the zone the clock was in. */
  timezone: z.string().min(1).max(60).optional(),
  ...tableShape,
  /** Several tables in one file, one entry each, in file order. */
  tables: z.array(table).min(1).optional(),
});

/** How to read one kind of delimited text: written by a user, or reported by the reader as what it settled on. */
export type Layout = z.infer<typeof layoutSchema>;
export type TableLayout = z.infer<typeof table>;

/** Checks a parsed JSON layout. Unknown keys and words are problems, each with its place. */
export function parseLayout(json: unknown): { ok: true; layout: Layout } | { ok: false; problems: string[] } {
  const result = layoutSchema.safeParse(json);
  if (result.success) return { ok: true, layout: result.data };
  return {
    ok: false,
    problems: result.error.issues.map((issue) => `${issue.path.join('.') || 'layout'}: ${issue.message}`),
  };
}

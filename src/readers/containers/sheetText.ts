import { DAY_MS } from '../../time/calendar.ts';

/** A sheet's rows as read: numbers, words, true dates. */
export type Cell = string | number | boolean | Date | null;

/** From here on all programs count the days alike. */
export const MARCH_1900 = Date.UTC(1900, 2, 1);
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** What the cells of one column are, as far as it decides how its dates are written. */
export interface ColumnOfDates {
  dates: boolean;
  /** All dates are days; times of the first day of the count; before March 1900. */
  days: boolean;
  clocks: boolean;
  early: boolean;
  /** Numbers of one and more stand among them. */
  amounts: boolean;
}

/** What decides how the rows of a sheet are written. */
export interface SheetFacts {
  columns: ColumnOfDates[];
}

/** One line a row, so that line numbers are the sheet's own. */
export function sheetText(rows: Cell[][]): string {
  return textWith(rows, factsOf(rows));
}

export function factsOf(rows: Cell[][]): SheetFacts {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 2);
  return { columns: Array.from({ length: width }, (_, column) => datesOf(rows, column)) };
}

/** What holds of rows that stand below each other. */
export function joinedFacts(a: SheetFacts, b: SheetFacts): SheetFacts {
  const [wide, narrow] = a.columns.length >= b.columns.length ? [a, b] : [b, a];
  const columns = wide.columns.map((one, c) => {
    const other = narrow.columns[c];
    return other === undefined
      ? one
      : {
          dates: one.dates || other.dates,
          days: one.days && other.days,
          clocks: one.clocks && other.clocks,
          early: one.early && other.early,
          amounts: one.amounts || other.amounts,
        };
  });
  return { columns };
}

/** The rows as they are written in a sheet of which all this holds. */
export function textWith(rows: Cell[][], { columns }: SheetFacts): string {
  const forms = columns.map(formOf);
  return rows.map((row) => forms.map((form, c) => cellText(row[c] ?? null, form)).join(',')).join('\n');
}

/** Whether rows of which `own` holds are written alike in a sheet of which `all` holds. */
export const writtenAlike = (own: SheetFacts, all: SheetFacts): boolean =>
  own.columns.length === all.columns.length &&
  own.columns.every((column, c) => !column.dates || formOf(column) === formOf(all.columns[c]!));

type DateForm = 'day' | 'clock' | 'stamp' | 'number';

/**
 * Dates of a column that never carry a time are days; those of the first day of the count are times of day alone. Where none is later
 * than February 1900 and some are no times of day, or numbers of one and more stand between them, they are numbers that are shown as
 * dates: what nobody did in 1900.
 */
function formOf({ days, clocks, early, amounts }: ColumnOfDates): DateForm {
  if (early && (amounts || !clocks)) return 'number';
  return clocks ? 'clock' : days ? 'day' : 'stamp';
}

function datesOf(rows: Cell[][], column: number): ColumnOfDates {
  const found: ColumnOfDates = { dates: false, days: true, clocks: true, early: true, amounts: false };
  for (const row of rows) {
    const cell = row[column];
    if (typeof cell === 'number' && cell >= 1) found.amounts = true;
    if (!(cell instanceof Date)) continue;
    found.dates = true;
    if (cell.getTime() % DAY_MS !== 0) found.days = false;
    if (found.clocks && !isFirstDay(cell)) found.clocks = false;
    if (cell.getTime() >= MARCH_1900) found.early = false;
  }
  return found;
}

/** Workbooks count days from the end of 1899 or from 1904; a time of day alone is a part of day 0. */
function isFirstDay(date: Date): boolean {
  const day = date.toISOString().slice(0, 10);
  return day === '1899-12-30' || day === '1899-12-31' || day === '1904-01-01';
}

function cellText(cell: Cell, form: DateForm): string {
  if (cell === null) return '';
  if (cell instanceof Date) {
    if (Number.isNaN(cell.getTime())) return '';
    // A millisecond of a date is no more than the eighth decimal of a number.
    if (form === 'number') return String(Math.round(((cell.getTime() - DAY_ZERO) / DAY_MS) * 1e6) / 1e6);
    // Fractions of a day are not exact: the nearest second is what was meant.
    const iso = new Date(Math.round(cell.getTime() / 1000) * 1000).toISOString();
    return form === 'day'
      ? iso.slice(0, 10)
      : form === 'clock'
        ? iso.slice(11, 19)
        : iso.slice(0, 19).replace('T', ' ');
  }
  if (typeof cell === 'number') return String(cell);
  return `"${String(cell)
    .replaceAll('"', '""')
    .replace(/[\r\n]+/g, ' ')}"`;
}

import { DAY_MS } from '../../time/calendar.ts';

/** A sheet's rows as read: numbers, words, true dates. */
export type Cell = string | number | boolean | Date | null;

/** From here on all programs count the days alike. */
export const MARCH_1900 = Date.UTC(1900, 2, 1);
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** One line a row, so that line numbers are the sheet's own. */
export function sheetText(rows: Cell[][]): string {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 2);
  const forms = Array.from({ length: width }, (_, column) => dateForm(rows, column));
  return rows
    .map((row) => Array.from({ length: width }, (_, c) => cellText(row[c] ?? null, forms[c]!)).join(','))
    .join('\n');
}

type DateForm = 'day' | 'clock' | 'stamp' | 'number';

/**
 * Dates of a column that never carry a time are days; those of the first day of the count are times of day alone. Where none is later
 * than February 1900 and some are no times of day, or numbers of one and more stand between them, they are numbers that are shown as
 * dates: what nobody did in 1900.
 */
function dateForm(rows: Cell[][], column: number): DateForm {
  let days = true;
  let clocks = true;
  let early = true;
  let amounts = false;
  for (const row of rows) {
    const cell = row[column];
    if (typeof cell === 'number' && cell >= 1) amounts = true;
    if (!(cell instanceof Date)) continue;
    if (cell.getTime() % DAY_MS !== 0) days = false;
    if (!isFirstDay(cell)) clocks = false;
    if (cell.getTime() >= MARCH_1900) early = false;
  }
  if (early && (amounts || !clocks)) return 'number';
  return clocks ? 'clock' : days ? 'day' : 'stamp';
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

import { DAY_MS } from '../../time/calendar.ts';

/** A sheet's rows as read: numbers, words, true dates. */
export type Cell = string | number | boolean | Date | null;

/** One line a row, so that line numbers are the sheet's own. */
export function sheetText(rows: Cell[][]): string {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 2);
  const forms = Array.from({ length: width }, (_, column) => dateForm(rows, column));
  return rows
    .map((row) => Array.from({ length: width }, (_, c) => cellText(row[c] ?? null, forms[c]!)).join(','))
    .join('\n');
}

/** Dates of a column that never carry a time are days; those of the first day of the count are times of day alone. */
function dateForm(rows: Cell[][], column: number): 'day' | 'clock' | 'stamp' {
  let days = true;
  let clocks = true;
  for (const row of rows) {
    const cell = row[column];
    if (!(cell instanceof Date)) continue;
    if (cell.getTime() % DAY_MS !== 0) days = false;
    if (!isFirstDay(cell)) clocks = false;
  }
  return clocks ? 'clock' : days ? 'day' : 'stamp';
}

/** Workbooks count days from the end of 1899 or from 1904; a time of day alone is a part of day 0. */
function isFirstDay(date: Date): boolean {
  const day = date.toISOString().slice(0, 10);
  return day === '1899-12-30' || day === '1899-12-31' || day === '1904-01-01';
}

function cellText(cell: Cell, form: 'day' | 'clock' | 'stamp'): string {
  if (cell === null) return '';
  if (cell instanceof Date) {
    if (Number.isNaN(cell.getTime())) return '';
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

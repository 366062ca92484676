import { offsetNamed } from '../evidence/zoneWords.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import { type Column, columnOf } from './header.ts';
import { cellText, fieldCount, locate, type Records } from './records.ts';
import { CONTENT, MAX_COLUMNS, mayBeHeader, SAMPLE, type Table } from './tables.ts';
import { conceptsOf, tokens } from './vocabulary.ts';

/** Lines that may stand above a table (ours). */
const ABOVE = 60;

/**
 * A table whose names tell what is measured and not which column is the time: the one whose cells are times, where there is one and
 * nobody knows its name. Of two of them nothing tells which is the wearer's.
 */
export function namedByCells(records: Records, content: readonly Column[]): Table | undefined {
  const [time, ...others] = content.filter(({ role }) => role === 'time');
  if (!time || others.length > 0) return undefined;
  for (let r = 0; r < Math.min(records.count - 1, ABOVE); r++) {
    const fields = Math.min(fieldCount(records, r), MAX_COLUMNS);
    if (fields < 2 || fields <= time.index || !mayBeHeader(records, r)) continue;
    const columns = Array.from({ length: fields }, (_, c) => columnOf(c, cellText(records, r, c)));
    const own = columns[time.index]!;
    // "Jan 14, 2026 9:13 AM,≤40 mg/dL": a row of data, though neither begins with a digit.
    if (holdsTime(records, r, time.index)) continue;
    // Names stand right above what they name, whatever lines of a key and its value come before.
    if (!columns.some(({ role }) => CONTENT.includes(role)) || !holdsTime(records, r + 1, time.index)) continue;
    if (own.role !== 'ignore' || own.name === '' || conceptsOf(tokens(own.name)).size > 0) return undefined;
    const offset = offsetNamed(own.name);
    columns[time.index] = { ...own, role: 'time', seen: true, ...(offset === undefined ? {} : { offset }) };
    return { header: r, from: r + 1, to: records.count, columns };
  }
  return undefined;
}

function holdsTime(records: Records, row: number, column: number): boolean {
  const span = { from: 0, to: 0 };
  return locate(records, row, column, span) && readStamp(records.bytes, span.from, span.to, newStamp()) !== SHAPE.none;
}

/** A column that holds numbers in some rows and words in others, beside one of times and nothing else. */
export function columnOfBoth(
  records: Records,
  columns: readonly Column[],
  names: number,
): { time: string; of: string; number: string; words: string } | undefined {
  const times = columns.filter(({ role }) => role === 'time');
  const others = columns.filter(({ role }) => role !== 'time');
  const [time, of] = [times[0], others[0]];
  if (!time || !of || times.length > 1 || others.length > 1) return undefined;
  const cells = Array.from({ length: Math.min(SAMPLE, records.count - names - 1) }, (_, i) =>
    cellText(records, names + 1 + i, of.index),
  );
  const number = cells.find((cell) => /^\d+(?:[.,]\d+)?$/.test(cell));
  const words = cells.find((cell) => /\p{L}{3}/u.test(cell));
  const name = (column: Column): string => cellText(records, names, column.index);
  if (number === undefined || words === undefined || name(time) === '' || name(of) === '') return undefined;
  return { time: name(time), of: name(of), number, words };
}

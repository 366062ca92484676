import { readOddCell } from '../glucose/oddCells.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import type { Column } from './header.ts';
import { readNumber } from './numbers.ts';
import { cellText, fieldCount, locate, type Records } from './records.ts';
import { isWhen, MAX_COLUMNS, SAMPLE } from './tables.ts';

/** Fewer rows than this may all hold one value. */
const FEW_ROWS = 6;
/** Rows that are all looked at, before one here and there (ours). */
const FIRST_ROWS = 20;
/** So small a share of rows may be longer than the others by mistake (ours). */
const FEW_LONGER = 0.05;

/** Columns of a file without names, told apart by what stands in them. */
export function columnsByContent(records: Records): { columns: Column[]; values: number } {
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  const times: number[] = [];
  const numbers: number[] = [];
  const filled: number[] = [];
  const withUnit: number[] = [];
  const words: number[] = [];
  const first: string[] = [];
  const varied: boolean[] = [];
  const clocks: number[] = [];
  const days: number[] = [];
  const widths: number[] = [];
  const step = Math.max(1, Math.floor(records.count / SAMPLE));
  const single = widthFrom(records, 0) < 2;
  // A date that stands only where it changes stands in the first rows.
  for (let r = 0; r < records.count; r += r < FIRST_ROWS ? 1 : step) {
    const fields = Math.min(fieldCount(records, r), MAX_COLUMNS);
    widths.push(fields);
    // A title is no cell of a column.
    if (fields < 2 && !single) continue;
    for (let c = 0; c < fields; c++) {
      if (!locate(records, r, c, span)) continue;
      const value = readNumber(records.bytes, span.from, span.to, look);
      const number = !Number.isNaN(value);
      const shape = readStamp(records.bytes, span.from, span.to, stamp);
      const text = number || shape === SHAPE.none ? cellText(records, r, c) : '';
      const odd = number || text === '' ? undefined : valueIn(text);
      if (odd === 'with-unit') withUnit[c] = (withUnit[c] ?? 0) + 1;
      if (odd === 'word') words[c] = (words[c] ?? 0) + 1;
      if (first[c] === undefined) first[c] = text;
      else if (text !== first[c]) varied[c] = true;
      // Four digits and parts of one may be anything; beside a date `0705` is a clock and 0.2930555556 a part of the day.
      const when = shape !== SHAPE.none && !(number && shape === SHAPE.clock);
      const part = number && value >= 0 && value < 1 && (value === 0 || look.after > 2);
      if (part || (number && shape === SHAPE.clock && text.length === 4)) clocks[c] = (clocks[c] ?? 0) + 1;
      if (shape === SHAPE.day || shape === SHAPE.serial) days[c] = (days[c] ?? 0) + 1;
      filled[c] = (filled[c] ?? 0) + 1;
      if (when) times[c] = (times[c] ?? 0) + 1;
      else if (number || odd === 'with-unit' || odd === 'number') numbers[c] = (numbers[c] ?? 0) + 1;
    }
  }
  // The same number in every row is a limit or a code, no reading.
  const isValue = (index: number, n: number): boolean =>
    named ? (withUnit[index] ?? 0) >= n * 0.8 : varied[index] === true || n < FEW_ROWS;
  const columns: Column[] = [];
  let values = 0;
  // Where cells of one column carry a unit of glucose, that one holds the values.
  const named = filled.some((n, index) => (withUnit[index] ?? 0) >= n * 0.8);
  const width = usualWidth(widths);
  Array.from({ length: Math.max(width, filled.length) }, (_, index) => filled[index] ?? 0).forEach((n, index) => {
    // Further cells of a few rows are no column: these rows are too long.
    if (index >= width && n <= widths.length * FEW_LONGER) return;
    const name = `#${index + 1}`;
    const bareClock =
      (clocks[index] ?? 0) >= n * 0.9 && filled.some((all, c) => c !== index && (days[c] ?? 0) >= all * 0.8);
    if (n > 0 && (bareClock || (times[index] ?? 0) >= n * 0.8)) columns.push({ index, name, role: 'time' });
    else if (isMostly(numbers[index] ?? 0, words[index] ?? 0, n) && isValue(index, n)) {
      columns.push({ index, name, role: 'glucose' });
      values++;
    } else columns.push({ index, name, role: 'ignore' });
  });
  return { columns, values };
}

/** The number of cells that most of the rows from `from` on have, looked at here and there. */
export function widthFrom(records: Records, from: number): number {
  const widths: number[] = [];
  const step = Math.max(1, Math.floor((records.count - from) / SAMPLE));
  for (let r = from; r < records.count; r += step) widths.push(Math.min(fieldCount(records, r), MAX_COLUMNS));
  return usualWidth(widths);
}

function usualWidth(widths: number[]): number {
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  return [...counts].reduce((best, one) => (one[1] > best[1] ? one : best), [0, 0])[0];
}

/** Words for low and high are values where numbers stand among them; of words alone nothing tells what they are of. */
const isMostly = (numbers: number, words: number, cells: number): boolean =>
  numbers > 0 && numbers + words >= cells * 0.8;

/** How a cell that is no plain number holds a value: `6,3 ммоль/л`, `LOW mg/dL` with its unit, `١٠.٩`, `<2.2` as a number, `LOW` as a word. */
function valueIn(text: string): 'with-unit' | 'number' | 'word' | undefined {
  const odd = readOddCell(text);
  if (odd.is !== 'number' && odd.is !== 'limit') return undefined;
  if (odd.unit !== undefined) return 'with-unit';
  return odd.is === 'limit' && Number.isNaN(odd.bound) ? 'word' : 'number';
}

/** The first row of data of a file without names: a time and a value. What stands above it tells of the whole. */
export function firstOfData(records: Records, columns: readonly Column[]): number {
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const timed = (row: number): boolean =>
    columns.some(
      (column) =>
        isWhen(column) &&
        locate(records, row, column.index, span) &&
        readStamp(records.bytes, span.from, span.to, stamp) !== SHAPE.none,
    );
  // A second date is no value: such a line tells from when to when.
  const filled = (row: number): boolean =>
    columns.some(
      ({ role, index }) =>
        (role === 'glucose' || role === 'sensor') &&
        locate(records, row, index, span) &&
        [SHAPE.none, SHAPE.clock].some((is) => is === readStamp(records.bytes, span.from, span.to, stamp)),
    );
  for (let row = 0; row < Math.min(records.count, SAMPLE); row++) if (timed(row) && filled(row)) return row;
  return 0;
}

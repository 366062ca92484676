import { DAY_MS } from '../../time/calendar.ts';
import { readNumber } from '../table/numbers.ts';
import { locate, type Records } from '../table/records.ts';
import { NOT_A_TIME, SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** Sums and words below a table are no times; more than this and the column holds something else (ours). */
const MOST_ODD = 5;
/** So many decimals are no hour and minute parted by a point. */
const DECIMALS = 4;

/**
 * Times of day as spreadsheets count them, parts of a day from 0 to 1: only where all but a few cells are one, and most have more
 * decimals than a clock has digits. Fills the cells as clock times.
 */
export function readFractions(records: Records, from: number, cells: TimeCells): void {
  const n = cells.shape.length;
  const part = new Float64Array(n).fill(Number.NaN);
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  let [filled, long, odd] = [0, 0, 0];
  for (let k = 0; k < n; k++) {
    if (!locate(records, from + k, cells.column.index, span)) continue;
    const value = readNumber(records.bytes, span.from, span.to, look);
    if (!(value >= 0 && value < 1)) {
      if (++odd > MOST_ODD) return;
      continue;
    }
    part[k] = value;
    filled++;
    if (look.after >= DECIMALS) long++;
  }
  if (odd * 4 >= filled || long * 2 < filled) return;
  cells.counts.fill(0);
  for (let k = 0; k < n; k++) {
    if (Number.isNaN(part[k])) {
      if (cells.shape[k] !== SHAPE.none) cells.flags[k] = NOT_A_TIME;
      cells.shape[k] = SHAPE.none;
      continue;
    }
    cells.shape[k] = SHAPE.clock;
    cells.flags[k] = 0;
    // To the second: a spreadsheet rounds its parts of a day.
    cells.ms[k] = Math.round((part[k]! * DAY_MS) / 1000) * 1000;
    cells.counts[SHAPE.clock]!++;
  }
  cells.halfLost = false;
}

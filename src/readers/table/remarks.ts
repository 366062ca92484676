import type { IssueBook } from '../book.ts';
import { CELL, type GlucoseCells } from '../glucose/glucoseCell.ts';
import { CLOCK_FLAGS } from '../times/clockCell.ts';
import type { TimeCells } from '../times/timeColumn.ts';

/** The range most sensors report in mg/dL; values just beyond it may stand for "below" and "above" (ours). */
const SENSOR_RANGE = { low: 40, high: 400 };

/** Tells what is worth knowing about a sensor column as a whole; changes nothing. */
export function remarkGlucose(cells: GlucoseCells, book: IssueBook): void {
  let unknown = 0;
  let below = 0;
  let above = 0;
  let inside = 0;
  let beyond = 0;
  for (let k = 0; k < cells.state.length; k++) {
    const value = cells.value[k]!;
    if (cells.state[k] === CELL.limit) {
      if (Number.isNaN(value)) unknown++;
      continue;
    }
    if (cells.state[k] !== CELL.number || cells.unit[k] !== 0) continue;
    if (value === SENSOR_RANGE.low - 1) below++;
    else if (value === SENSOR_RANGE.high + 1) above++;
    else if (value >= SENSOR_RANGE.low && value <= SENSOR_RANGE.high) inside++;
    else beyond++;
  }
  if (unknown > 0) book.add('limit-unknown', 'note', 0, { count: unknown });
  if (below + above > 0 && inside > 0 && beyond === 0) {
    const which = [below > 0 ? '39' : '', above > 0 ? '401' : ''].filter((text) => text !== '');
    book.add('at-sensor-limit', 'note', 0, { actual: which, count: below + above });
  }
}

/** Tells how often a clock was read with a little goodwill. */
export function remarkClock(cells: TimeCells, book: IssueBook): void {
  let second60 = 0;
  let needlessHalf = 0;
  for (const flags of cells.flags) {
    if (flags === 0 || flags >= 128) continue;
    if (flags & CLOCK_FLAGS.second60) second60++;
    if (flags & CLOCK_FLAGS.needlessHalf) needlessHalf++;
  }
  if (second60 > 0) book.add('second-60', 'note', 0, { count: second60 });
  if (needlessHalf > 0) book.add('half-not-needed', 'note', 0, { count: needlessHalf });
}

import { DAY_MS, HOUR_MS } from '../../time/calendar.ts';
import { CLOCK_FLAGS } from './clockCell.ts';
import { SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** Fewer such times are slips of one hand (ours). */
const FEWEST = 3;

/**
 * A clock whose hours count from 1 to 24: the first hour of the day is written 24:05. Some write it with the date that begins there,
 * some with the date that ends. The rows beside it tell which: hour 1 of the same date, or hour 23. `unclear`: they do not agree.
 */
export function mendHours24(cells: TimeCells, date: Int32Array): 'none' | 'unclear' | number {
  const { ms, shape, flags } = cells;
  const timed = (k: number): boolean => shape[k] === SHAPE.stamp || shape[k] === SHAPE.clock;
  const late = (k: number): boolean => timed(k) && ms[k]! >= DAY_MS && ms[k]! < DAY_MS + HOUR_MS;
  let past = 0;
  let zero = false;
  for (let k = 0; k < ms.length; k++) {
    if (!timed(k)) continue;
    if (late(k) && ms[k]! > DAY_MS) past++;
    if (ms[k]! < HOUR_MS) zero = true;
  }
  if (past < FEWEST || zero) return 'none';
  let [begins, ends] = [0, 0];
  for (let k = 0; k < ms.length; k++) {
    if (!late(k)) continue;
    for (const step of [-1, 1]) {
      const neighbour = k + step;
      if (
        neighbour < 0 ||
        neighbour >= ms.length ||
        !timed(neighbour) ||
        late(neighbour) ||
        date[neighbour] !== date[k]
      )
        continue;
      if (ms[neighbour]! < DAY_MS / 2) begins++;
      else ends++;
    }
  }
  if (begins > 0 === ends > 0) return 'unclear';
  let count = 0;
  for (let k = 0; k < ms.length; k++) {
    if (!late(k)) continue;
    flags[k]! &= ~CLOCK_FLAGS.impossible;
    if (begins > 0) ms[k]! -= DAY_MS;
    count++;
  }
  return count;
}

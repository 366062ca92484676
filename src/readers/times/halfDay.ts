import type { Detail } from '../../model/detail.ts';
import { SHAPE } from './stamp.ts';
import { clockShape, type TimeCells } from './timeColumn.ts';

const HALF = 43_200_000;

/** Order is evidence from this many steps on, when at most this share of them goes the other way (ours). */
const LEAST_STEPS = 12;
const MOST_AGAINST = 0.15;

/** Both readings of the first clock time of a column that lost its halves. */
export function bothHalves(
  { ms, shape }: TimeCells,
  lineOf: (k: number) => number,
): Extract<Detail, { is: 'half-read' }> {
  const k = shape.findIndex((one) => one === SHAPE.stamp || one === SHAPE.clock);
  const text = (half: number) => new Date((ms[k]! % HALF) + half * HALF).toISOString().slice(11, 16);
  return { is: 'half-read', line: lineOf(k), early: text(0), late: text(1) };
}

/** Whether, within one date, an hour 12 is followed by an hour 1 of neighbouring rows, in either order of rows. */
function runsPastNoonToOne({ ms, shape, counts }: TimeCells, date: Int32Array): boolean {
  let wraps = 0;
  const usual = clockShape({ counts });
  const timed = (k: number) => shape[k] === usual;
  for (let k = 1; k < ms.length; k++) {
    if (!timed(k) || !timed(k - 1) || date[k] !== date[k - 1]) continue;
    const [early, late] = [Math.min(ms[k]!, ms[k - 1]!), Math.max(ms[k]!, ms[k - 1]!)];
    if (late >= HALF && early < HALF / 6 && late - HALF < early) wraps++;
  }
  return wraps > 0;
}

/**
 * A 12-hour clock that lost its AM and PM: each day runs through the hours twice. Where every day of the file does so
 * once, the order of rows tells the half, and the cells are mended. `untold`: it happened, and order does not tell.
 */
export function mendHalves(cells: TimeCells, date: Int32Array): 'none' | 'mended' | 'untold' {
  if (!cells.halfLost) return 'none';
  const n = cells.ms.length;
  const usual = clockShape(cells);
  const timed = (k: number) => cells.shape[k] === usual;
  let forward = 0;
  let backward = 0;
  for (let k = 1; k < n; k++) {
    if (!timed(k) || !timed(k - 1) || date[k] !== date[k - 1]) continue;
    if (cells.ms[k]! % HALF > cells.ms[k - 1]! % HALF) forward++;
    else if (cells.ms[k]! % HALF < cells.ms[k - 1]! % HALF) backward++;
  }
  const ascending = forward >= backward;
  // Rows in no order, or only a handful, tell nothing about a clock: they are taken as written.
  const steps = forward + backward;
  if (steps < LEAST_STEPS || Math.min(forward, backward) > steps * MOST_AGAINST) return 'none';
  const runs: { from: number; to: number; jumps: number[] }[] = [];
  for (let k = 0; k < n; k++) {
    if (!timed(k)) continue;
    const run = runs[runs.length - 1];
    if (!run || date[k] !== date[run.to]) {
      runs.push({ from: k, to: k, jumps: [] });
      continue;
    }
    const step = (cells.ms[k]! % HALF) - (cells.ms[run.to]! % HALF);
    // From 11:59 back to 12:00 is a jump of half a day; a small one is only a row out of order.
    if (ascending ? step < -HALF / 2 : step > HALF / 2) run.jumps.push(k);
    run.to = k;
  }
  // A clock of 24 hours runs neither twice through a date nor from 12 on to 1.
  if (runs.every(({ jumps }) => jumps.length === 0) && !runsPastNoonToOne(cells, date)) return 'none';
  if (runs.some((run) => run.jumps.length !== 1)) return 'untold';
  for (const { from, to, jumps } of runs) {
    for (let k = from; k <= to; k++) {
      if (!timed(k)) continue;
      const early = ascending ? k < jumps[0]! : k >= jumps[0]!;
      cells.ms[k] = (cells.ms[k]! % HALF) + (early ? 0 : HALF);
    }
  }
  return 'mended';
}

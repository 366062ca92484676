import type { Issue } from '../model/input.ts';
import { HOUR_MS } from '../time/calendar.ts';
import { instantsOf, type LocalClock } from '../time/clock.ts';
import { type PlacedFile, SKIPPED_HOUR } from './placed.ts';
import { clockText } from './samples.ts';

/** Readings in one run through a doubled hour, in the order of time as the file tells it. */
type Run = number[];

/**
 * Wall times at which the clocks changed. Those in a skipped hour never were: set aside. Those in a doubled hour came
 * twice: a run that jumps back once passes through it twice (first pass = first instant); a run that passes once takes
 * the pass that joins the readings around it, the first when both or neither do.
 * `indices` are readings whose wall time has none or two instants, ascending.
 */
export function settleChangeHours(placed: PlacedFile, clock: LocalClock, indices: number[]): void {
  const { wall } = placed.file.readings;
  const skipped: number[] = [];
  let run: Run = [];
  let last = -2;
  const closeRun = () => {
    if (run.length > 0) settleRun(placed, clock, run);
    run = [];
  };
  const ordered = placed.newestFirst ? indices.toReversed() : indices;
  for (const i of ordered) {
    const instants = instantsOf(clock, wall[i]!);
    if (instants.length === 0) {
      placed.at[i] = Number.NaN;
      placed.lost[i] = SKIPPED_HOUR;
      skipped.push(i);
    } else if (instants.length === 1) {
      placed.at[i] = instants[0]!;
    } else {
      const far = run.length > 0 && Math.abs(wall[i]! - wall[run.at(-1)!]!) > 3 * HOUR_MS;
      if (far || Math.abs(i - last) !== 1) closeRun();
      run.push(i);
      last = i;
    }
  }
  closeRun();
  if (skipped.length > 0) placed.issues.push(about(placed, 'skipped-hour', 'warning', skipped));
}

function settleRun(placed: PlacedFile, clock: LocalClock, run: Run): void {
  const { wall } = placed.file.readings;
  const jumps: number[] = [];
  for (let k = 1; k < run.length; k++) if (wall[run[k]!]! < wall[run[k - 1]!]!) jumps.push(k);
  if (jumps.length === 1) {
    run.forEach((i, k) => {
      placed.at[i] = instantsOf(clock, wall[i]!)[k < jumps[0]! ? 0 : 1]!;
    });
    return;
  }
  const pass = singlePass(placed, clock, run);
  for (const i of run) placed.at[i] = instantsOf(clock, wall[i]!)[pass.second ? 1 : 0]!;
  if (!pass.sure && !placed.issues.some((issue) => issue.code === 'doubled-hour')) {
    placed.issues.push(about(placed, 'doubled-hour', 'note', run));
  }
}

/**
 * Which pass a single run through a doubled hour was, by the readings of the file just before and just after. A pass
 * joins when the pause to its neighbour is at most half the doubled stretch (rule ours).
 */
function singlePass(placed: PlacedFile, clock: LocalClock, run: Run): { second: boolean; sure: boolean } {
  const { wall, count } = placed.file.readings;
  const one = wall[run[0]!]!;
  const [first = 0, second = 0] = instantsOf(clock, one);
  const length = second - first;
  let before = Number.NEGATIVE_INFINITY;
  let after = Number.POSITIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const here = wall[i]!;
    if (Math.abs(here - one) > 3 * HOUR_MS) continue;
    if (instantsOf(clock, here).length === 2) {
      low = Math.min(low, here);
      high = Math.max(high, here);
    } else if (here < one) before = Math.max(before, here);
    else after = Math.min(after, here);
  }
  const joinsFirst = low - before <= length / 2;
  const joinsSecond = after - high <= length / 2;
  return { second: joinsSecond && !joinsFirst, sure: joinsFirst !== joinsSecond };
}

function about(
  placed: PlacedFile,
  code: 'skipped-hour' | 'doubled-hour',
  level: Issue['level'],
  rows: number[],
): Issue {
  const { wall, line } = placed.file.readings;
  const i = rows[0]!;
  return {
    code,
    level,
    origin: { file: placed.file.name, line: line[i]! },
    actual: clockText(wall[i]!),
    count: rows.length,
  };
}

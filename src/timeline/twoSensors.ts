import type { Issue } from '../model/input.ts';
import { HOUR_MS, MINUTE_MS } from '../time/calendar.ts';
import { OTHER_SENSOR, type PlacedFile } from './placed.ts';
import { dropLost, type Pool } from './pool.ts';
import { clockText } from './samples.ts';
import { CLEAR_SHARE, usualStep } from './steps.ts';

/**
 * Two grids side by side for less than this are chance (rule ours). Where most of the data are one grid whose interval
 * is plain, an hour doubled by a clock change is enough; `each` is the readings of either grid. Where they are not, the
 * interval is itself a guess from every second reading: a grid with holes (5, 10, 5, 10 minutes) makes the same picture,
 * so that only a long stretch is believed.
 */
const PLAIN = { shortest: 45 * MINUTE_MS, each: 10 };
const GUESSED = { shortest: 6 * HOUR_MS, each: 20 };

/** Share of the interval by which a reading may be off its grid. */
const SLACK = 0.1;

/** A grid has ended where nothing continues it within this time. */
const PAUSE = 2 * HOUR_MS;

/**
 * Two sensors worn at once give two grids of the same interval, a few minutes apart. Their readings are never mixed,
 * because a low that one saw would be broken up by the other: while both run, the one that was worn longer is used and
 * the other's readings are set aside.
 * A clock that was set back makes the same picture and gets the same treatment. Seen in the times alone, so it does not
 * matter which file they came from.
 */
export function settleTwoSensors(pool: Pool, files: PlacedFile[]): Issue[] {
  const usual = usualStep(pool.at, 0, pool.count);
  if (!usual) return [];
  const interval = usual.interval * MINUTE_MS;
  const least = usual.lag === 1 && usual.share >= CLEAR_SHARE ? PLAIN : GUESSED;
  const issues: Issue[] = [];
  for (let start = 0; start + 2 < pool.count; start++) {
    const end = endOfBoth(pool, start, interval);
    if (end - start < 2 * least.each || pool.at[end - 1]! - pool.at[start]! < least.shortest) continue;
    // Even and odd places of the stretch are the two grids.
    const even = reach(pool, start, end, 0, interval);
    const odd = reach(pool, start, end, 1, interval);
    const first = even >= odd ? start + 1 : start;
    let dropped = 0;
    for (let k = first; k < end; k += 2, dropped++) files[pool.file[k]!]!.lost[pool.index[k]!] = OTHER_SENSOR;
    const { name, readings } = files[pool.file[first]!]!.file;
    issues.push({
      code: 'two-sensors',
      level: 'warning',
      origin: { file: name, line: readings.line[pool.index[first]!]! },
      actual: clockText(readings.wall[pool.index[first]!]!),
      count: dropped,
    });
    start = end - 1;
  }
  if (issues.length > 0) dropLost(pool, files);
  return issues;
}

/**
 * End of the stretch from `start` in which every second reading keeps the interval and the others stand in between, all
 * at the same distance: readings taken by hand between those of a sensor come at any distance. It is of whole pairs, the
 * shorter step inside: a reading before the first or after the last would be taken for one of the wrong grid.
 */
function endOfBoth(pool: Pool, start: number, interval: number): number {
  const phase = pool.at[start + 1]! - pool.at[start]!;
  if (phase > interval / 2) return start;
  let end = start;
  while (
    end + 2 < pool.count &&
    isStep(pool.at[end + 2]! - pool.at[end]!, interval) &&
    Math.abs(pool.at[end + 1]! - pool.at[end]! - ((end - start) % 2 === 0 ? phase : interval - phase)) <=
      SLACK * interval
  ) {
    end++;
  }
  return end === start ? start : end + 2 - ((end - start) % 2);
}

/**
 * Milliseconds for which the grid on the even (0) or odd (1) places of a stretch runs on before and after it. Where the two
 * lie close together, a reading belongs to the nearer.
 */
function reach(pool: Pool, start: number, end: number, place: 0 | 1, interval: number): number {
  const slack = Math.min(SLACK * interval, (pool.at[start + 1]! - pool.at[start]!) / 2);
  return (
    runOn(pool, start + place, start, -1, interval, slack) + runOn(pool, end - 2 + place, end - 1, 1, interval, slack)
  );
}

/** Follows a grid away from the stretch, past single missing readings, up to a pause. */
function runOn(pool: Pool, from: number, edge: number, way: 1 | -1, interval: number, slack: number): number {
  const begin = pool.at[from]!;
  let last = begin;
  for (let k = edge + way; k >= 0 && k < pool.count; k += way) {
    const step = Math.abs(pool.at[k]! - last);
    if (step > PAUSE) break;
    const whole = Math.round(step / interval);
    if (whole > 0 && Math.abs(step - whole * interval) <= slack) last = pool.at[k]!;
  }
  return Math.abs(last - begin);
}

function isStep(step: number, interval: number): boolean {
  return Math.abs(step - interval) <= SLACK * interval;
}

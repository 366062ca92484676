import type { Issue } from '../model/input.ts';
import { DAY_MS, HOUR_MS } from '../time/calendar.ts';
import { sameSaying, twinAt } from './duplicates.ts';
import { OTHER_SENSOR, type PlacedFile } from './placed.ts';
import { dropLost, type Pool } from './pool.ts';
import { clockText } from './samples.ts';

/** Two sensors are worn side by side for so long at most when one gives way to the other (ours). */
const LONGEST = DAY_MS;
/** Times told twice that lie further apart than this belong to different overlaps. */
const PAUSE = 2 * HOUR_MS;
/** So many readings before and after tell that each of the two rows runs on by itself. */
const RUN = 12;

/** Readings `[from, to)` of the pool, the first and the last of them at times told twice. */
interface Stretch {
  from: number;
  to: number;
}

/**
 * At a change of sensor the old one and the new may both send for a while, at the very same times: two values then, and no
 * contradiction. Seen by what goes on around the stretch: before it only the one row of readings, after it only the other.
 * The old sensor is used to its end, as a new one reads less exactly in its first hours (common practice, no source).
 */
export function settleOverlaps(pool: Pool, files: PlacedFile[]): Issue[] {
  const issues: Issue[] = [];
  for (const stretch of stretches(pool)) {
    const later = newcomers(pool, files, stretch);
    const [first] = later;
    if (first === undefined) continue;
    const { name, readings } = files[pool.file[first]!]!.file;
    const index = pool.index[first]!;
    for (const k of later) files[pool.file[k]!]!.lost[pool.index[k]!] = OTHER_SENSOR;
    issues.push({
      code: 'two-sensors',
      level: 'warning',
      origin: { file: name, line: readings.line[index]! },
      actual: clockText(readings.wall[index]!),
      count: later.length,
    });
  }
  if (issues.length > 0) dropLost(pool, files);
  return issues;
}

function stretches(pool: Pool): Stretch[] {
  const found: Stretch[] = [];
  for (let k = 1; k < pool.count; k++) {
    if (pool.at[k] !== pool.at[k - 1]) continue;
    const last = found.at(-1);
    if (last && pool.at[k]! - pool.at[last.to - 1]! <= PAUSE) last.to = k + 1;
    else found.push({ from: k - 1, to: k + 1 });
  }
  return found;
}

/** The readings of the new sensor in a stretch; none where the stretch is no change of sensor. */
function newcomers(pool: Pool, files: readonly PlacedFile[], { from, to }: Stretch): number[] {
  if (pool.at[to - 1]! - pool.at[from]! > LONGEST || from < RUN || pool.count - to < RUN) return [];
  const side = sidesOf(pool, files, { from, to });
  const old = side?.(from - 1);
  if (!side || old === undefined) return [];
  for (let i = 1; i <= RUN; i++) if (side(from - i) !== old || side(to - 1 + i) !== 1 - old) return [];
  const later: number[] = [];
  for (let k = from; k < to; k++) if (side(k) !== old) later.push(k);
  return later;
}

/**
 * Which of two files each place of the pool belongs to. Undefined where the times told twice are of one file (there, time
 * ran back: order.ts), of more than two, or mostly say the same: a copy.
 */
function sidesOf(pool: Pool, files: readonly PlacedFile[], { from, to }: Stretch) {
  const [one, two] = [pool.file[from]!, pool.file[from + 1]!];
  if (one === two) return undefined;
  let pairs = 0;
  let alike = 0;
  for (let k = from + 1; k < to; k++) {
    if (pool.at[k] !== pool.at[k - 1]) continue;
    // A third reading of the same time is of neither.
    if (pool.at[k] === pool.at[k + 1] || pool.file[k - 1] !== one || pool.file[k] !== two) return undefined;
    pairs++;
    if (sameSaying(twinAt(pool, files, k - 1), twinAt(pool, files, k))) alike++;
  }
  if (alike * 2 > pairs) return undefined;
  return (k: number) => (pool.file[k] === one ? 0 : pool.file[k] === two ? 1 : undefined);
}

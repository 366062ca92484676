import type { Issue } from '../model/input.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import { DUPLICATE, type PlacedFile, SET_ASIDE } from './placed.ts';
import { dropLost, type Pool } from './pool.ts';
import { valueText } from './samples.ts';

/** Issues listed one by one; what is beyond is told once with its count. */
const LISTED = 50;

/** mg/dL within which a value in one unit and a value in the other are the same number, rounded in each. */
const ROUNDING = 0.05 * MGDL_PER_MMOL + 0.5;

/** One reading of a group at the same instant. */
interface Twin {
  file: number;
  index: number;
  native: number;
  unit: number;
  limit: number;
}

/**
 * Readings at the same instant: when they say the same, one is used and the rest are duplicates; when they differ,
 * none is used and an issue names both lines. Never averaged. Which fate each distinct value gets does not depend on
 * the order of files or rows. `times`: for each file, those of its times that another reading contradicts.
 */
export function settleDuplicates(pool: Pool, files: PlacedFile[]): { issues: Issue[]; times: number[][] } {
  const issues: Issue[] = [];
  const times = files.map((): number[] => []);
  let contradictions = 0;
  let changed = false;
  for (let k = 1; k < pool.count; k++) {
    if (pool.at[k] !== pool.at[k - 1]) continue;
    const start = k - 1;
    while (k < pool.count && pool.at[k] === pool.at[start]) k++;
    changed = true;
    if (k - start === 2 && isCopy(pool, files, start)) continue;
    const group = twins(pool, files, start, k).sort(byTrust);
    const [first, ...rest] = group as [Twin, ...Twin[]];
    const other = rest.find((twin) => !sameSaying(first, twin));
    if (!other) {
      for (const twin of rest) files[twin.file]!.lost[twin.index] = DUPLICATE;
      continue;
    }
    contradictions++;
    for (const file of new Set(group.map((twin) => twin.file))) times[file]!.push(pool.at[start]!);
    if (contradictions <= LISTED) issues.push(contradiction(files, first, other));
    group.forEach((twin, g) => {
      const repeats = group.slice(0, g).some((earlier) => sameSaying(earlier, twin));
      files[twin.file]!.lost[twin.index] = repeats ? DUPLICATE : SET_ASIDE;
    });
  }
  if (contradictions > LISTED) issues.push({ code: 'contradictions', level: 'warning', count: contradictions });
  if (changed) dropLost(pool, files);
  return { issues, times };
}

/** The common case, two exports of one sensor, without making objects: marks the second when it is a plain copy. */
function isCopy(pool: Pool, files: PlacedFile[], k: number): boolean {
  const other = files[pool.file[k + 1]!]!;
  const a = files[pool.file[k]!]!.file.readings;
  const b = other.file.readings;
  const i = pool.index[k]!;
  const j = pool.index[k + 1]!;
  const copy = a.native[i] === b.native[j] && a.unit[i] === b.unit[j] && a.limit[i] === b.limit[j];
  if (copy) other.lost[j] = DUPLICATE;
  return copy;
}

const twins = (pool: Pool, files: PlacedFile[], from: number, to: number): Twin[] =>
  Array.from({ length: to - from }, (_, k) => twinAt(pool, files, from + k));

export function twinAt(pool: Pool, files: readonly PlacedFile[], k: number): Twin {
  const file = pool.file[k]!;
  const index = pool.index[k]!;
  const { native, unit, limit } = files[file]!.file.readings;
  return { file, index, native: native[index]!, unit: unit[index]!, limit: limit[index]! };
}

/** A known bound before an unknown one, a bound before a plain number at it, the finer unit, then the lower value. */
function byTrust(a: Twin, b: Twin): number {
  return (
    Number(Number.isNaN(a.native)) - Number(Number.isNaN(b.native)) ||
    Math.abs(b.limit) - Math.abs(a.limit) ||
    a.unit - b.unit ||
    a.native - b.native ||
    a.limit - b.limit ||
    a.file - b.file ||
    a.index - b.index
  );
}

/** Whether `b` repeats what `a` says; `a` comes first in order of trust. */
export function sameSaying(a: Twin, b: Twin): boolean {
  if (Number.isNaN(b.native)) return a.limit === b.limit;
  if (a.limit !== b.limit && b.limit !== 0) return false;
  if (a.unit === b.unit) return a.native === b.native;
  return Math.abs(inMgPerDl(a) - inMgPerDl(b)) <= ROUNDING;
}

function inMgPerDl(twin: Twin): number {
  return twin.unit === 1 ? twin.native * MGDL_PER_MMOL : twin.native;
}

function contradiction(files: PlacedFile[], a: Twin, b: Twin): Issue {
  const fileOf = (twin: Twin) => files[twin.file]!.file;
  const lineOf = (twin: Twin) => fileOf(twin).readings.line[twin.index]!;
  const readingAt = (twin: Twin) => {
    const { name, readings } = fileOf(twin);
    return { is: 'reading-at', reading: valueText(readings, twin.index), file: name, line: lineOf(twin) } as const;
  };
  const origin = { file: fileOf(a).name, line: lineOf(a) };
  return { code: 'contradiction', level: 'warning', origin, actual: [readingAt(a), readingAt(b)] };
}

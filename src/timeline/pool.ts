import { firstFrom } from '../stats/sorted.ts';
import type { PlacedFile } from './placed.ts';
import { KEPT } from './placed.ts';

/** All files' readings by time: where each came from. Equal instants are neighbours, in order of file and row. */
export interface Pool {
  count: number;
  at: Float64Array;
  /** Index into the list of placed files. */
  file: Uint16Array;
  /** Index into that file's readings. */
  index: Int32Array;
}

/** Joins the files and puts them in order of time. Sorts only when they are not in order already. */
export function poolFiles(files: PlacedFile[]): Pool {
  const total = files.reduce((sum, { lost }) => sum + lost.length, 0);
  const pool = emptyPool(total);
  let ordered = true;
  let last = Number.NEGATIVE_INFINITY;
  for (const f of orderOfFirst(files)) {
    const { at, lost, newestFirst } = files[f]!;
    for (let k = 0; k < at.length; k++) {
      const i = newestFirst ? at.length - 1 - k : k;
      if (lost[i] !== KEPT) continue;
      const here = at[i]!;
      if (here < last) ordered = false;
      last = here;
      pool.at[pool.count] = here;
      pool.file[pool.count] = f;
      pool.index[pool.count++] = i;
    }
  }
  return ordered ? pool : sorted(pool);
}

/** Keeps the readings that are not lost, in place. */
export function dropLost(pool: Pool, files: PlacedFile[]): void {
  let kept = 0;
  for (let k = 0; k < pool.count; k++) {
    if (files[pool.file[k]!]!.lost[pool.index[k]!] !== KEPT) continue;
    pool.at[kept] = pool.at[k]!;
    pool.file[kept] = pool.file[k]!;
    pool.index[kept++] = pool.index[k]!;
  }
  pool.count = kept;
}

/** Index of the first reading at or after an instant. */
export function firstNotBefore(pool: Pool, instant: number): number {
  return firstFrom(pool.at, pool.count, instant);
}

function emptyPool(size: number): Pool {
  return { count: 0, at: new Float64Array(size), file: new Uint16Array(size), index: new Int32Array(size) };
}

/** Files by their earliest reading, so that exports which follow one another need no sorting. */
function orderOfFirst(files: PlacedFile[]): number[] {
  const first = files.map(({ at, newestFirst }) => (newestFirst ? at.at(-1) : at[0]) ?? 0);
  return files.map((_, f) => f).sort((a, b) => (first[a]! || 0) - (first[b]! || 0) || a - b);
}

/** In order of time, stable. Merges the ascending runs there are, so that files in order cost one pass a file. */
function sorted(pool: Pool): Pool {
  const { count, at } = pool;
  let order = new Int32Array(count);
  let spare = new Int32Array(count);
  for (let k = 0; k < count; k++) order[k] = k;
  let runs = [0];
  for (let k = 1; k < count; k++) if (at[k]! < at[k - 1]!) runs.push(k);
  while (runs.length > 1) {
    const merged: number[] = [];
    for (let r = 0; r < runs.length; r += 2) {
      const from = runs[r]!;
      mergeRuns(at, order, spare, from, runs[r + 1] ?? count, runs[r + 2] ?? count);
      merged.push(from);
    }
    [order, spare] = [spare, order];
    runs = merged;
  }
  const result = emptyPool(count);
  result.count = count;
  for (let k = 0; k < count; k++) {
    result.at[k] = at[order[k]!]!;
    result.file[k] = pool.file[order[k]!]!;
    result.index[k] = pool.index[order[k]!]!;
  }
  return result;
}

/** Merges the neighbours `[from, middle)` and `[middle, to)` of `order` into `into`; on equal instants the first goes first. */
function mergeRuns(at: Float64Array, order: Int32Array, into: Int32Array, from: number, middle: number, to: number) {
  let a = from;
  let b = middle;
  for (let k = from; k < to; k++) {
    const first = a < middle && (b >= to || at[order[a]!]! <= at[order[b]!]!);
    into[k] = first ? order[a++]! : order[b++]!;
  }
}

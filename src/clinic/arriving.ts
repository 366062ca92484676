/** What tells one state of a file from another, e.g. its size and time of change, by path. */
export type Marks = ReadonlyMap<string, string>;

/** Since when, in milliseconds of any clock that only goes forward, each path has been as it is. */
export type Watched = ReadonlyMap<string, { mark: string; since: number }>;

const GONE = 'gone';

/** Looks once more. A path that is not there any more is in a state of its own: a share may be away for a moment. */
export function look(before: Watched, marks: Marks, now: number): Watched {
  const all = new Map<string, { mark: string; since: number }>();
  for (const path of new Set([...before.keys(), ...marks.keys()])) {
    const mark = marks.get(path) ?? GONE;
    const last = before.get(path);
    all.set(path, last?.mark === mark ? last : { mark, since: now });
  }
  return all;
}

/** What is new, changed or gone since the marks were those of `done`: parts of it still move, others have settled. */
export function since(
  done: Marks,
  watched: Watched,
  now: number,
  settle: number,
): { moving: Set<string>; settled: Set<string> } {
  const [moving, settled] = [new Set<string>(), new Set<string>()];
  for (const [path, { mark, since: start }] of watched) {
    if ((done.get(path) ?? GONE) === mark) continue;
    (now - start >= settle ? settled : moving).add(path);
  }
  return { moving, settled };
}

/** What is done after a run that left out what moved. */
export function doneAfter(done: Marks, watched: Watched, moving: ReadonlySet<string>): Marks {
  const all = new Map<string, string>();
  for (const [path, { mark }] of watched) {
    const known = moving.has(path) ? done.get(path) : mark;
    if (known !== undefined && known !== GONE) all.set(path, known);
  }
  return all;
}

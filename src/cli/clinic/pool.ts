export interface PoolOptions<T, R> {
  /** Path of the worker's file; it exports `work`. */
  filename: string;
  threads: number;
  /** Milliseconds a task may take. */
  timeLimit: number;
  /** Megabytes of heap a worker may use. */
  memoryLimit: number;
  /** Tasks that no thread may have, and who does them. */
  exempt?: { is(task: T): boolean; run(task: T): Promise<Ended<R>> };
}

/**
 * Megabytes of young objects in a worker, twice the engine's own measure: most of a person's report lives through fewer
 * collections, which takes a tenth off their cost.
 */
const YOUNG = 96;

/** How a task ended: with its result, or because its worker was stopped or died. */
export type Ended<R> = { ok: true; result: R } | ({ ok: false } & Death);

export const DEATHS = ['tooLong', 'tooMuchMemory', 'died'] as const;

export interface Death {
  why: (typeof DEATHS)[number];
  detail: string;
}

/** Worker threads that are kept. Give it no more tasks at a time than it has threads: a task's time begins at once. */
export interface Pool<T, R> {
  /** Never rejects. A worker that dies, or runs out of time or memory, is replaced; the others never notice. */
  run(task: T): Promise<Ended<R>>;
  close(): Promise<void>;
}

export async function openPool<T, R>({
  filename,
  threads,
  timeLimit,
  memoryLimit,
  exempt,
}: PoolOptions<T, R>): Promise<Pool<T, R>> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename,
    name: 'work',
    minThreads: threads,
    maxThreads: threads,
    isolateWorkers: false,
    resourceLimits: { maxOldGenerationSizeMb: memoryLimit, maxYoungGenerationSizeMb: YOUNG },
  });
  return {
    run(task) {
      if (exempt?.is(task)) return exempt.run(task);
      const signal = AbortSignal.timeout(timeLimit);
      return pool.run(task, { signal }).then(
        (result: R) => ({ ok: true, result }),
        (error: unknown) => ({ ok: false, ...deathOf(error, signal.aborted) }),
      );
    },
    close: () => pool.destroy(),
  };
}

/**
 * Runs every task, and tells each result as it comes. `stop` is asked before each task: once true, no further task is
 * begun. Resolves when all that were begun have ended.
 */
export async function runAll<T, R>(
  tasks: readonly T[],
  options: PoolOptions<T, R>,
  onEnd: (task: T, ended: Ended<R>) => void,
  stop: () => boolean = () => false,
): Promise<void> {
  const threads = Math.min(options.threads, tasks.length);
  if (threads === 0) return;
  const pool = await openPool<T, R>({ ...options, threads });
  let next = 0;
  const feed = async (): Promise<void> => {
    while (next < tasks.length && !stop()) {
      const task = tasks[next++]!;
      onEnd(task, await pool.run(task));
    }
  };
  await Promise.all(Array.from({ length: threads }, feed));
  await pool.close();
}

function deathOf(error: unknown, late: boolean): Death {
  if (late) return { why: 'tooLong', detail: '' };
  // Never the message: it may hold a person's text.
  const { code, name } = error as { code?: string; name?: string };
  if (code === 'ERR_WORKER_OUT_OF_MEMORY') return { why: 'tooMuchMemory', detail: code };
  return { why: 'died', detail: code ?? name ?? 'unknown' };
}

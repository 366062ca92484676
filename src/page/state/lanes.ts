import { startWorker, type Worker } from './worker.ts';

/** So many people a worker are worth its start. */
const WORTH_A_WORKER = 4;
/** Milliseconds that one person may take, as the command's run allows. */
const LONGEST = 120_000;

class Late extends Error {}

/** How somebody's turn ended: with a value, or with the end of its worker. */
export type Turned<T> = { value: T } | { died: { why: 'tooLong' | 'died'; detail: string } };

export interface Lanes {
  /** Resolves when all that were begun have ended; whoever was not reached is not told. */
  whole: Promise<void>;
  stop(): void;
}

/**
 * Gives everyone their turn, in as many workers as there are cores but one. A worker that fails or takes too long is replaced; the
 * others never notice.
 */
export function openLanes<P, T>(
  people: readonly P[],
  begin: (worker: Worker) => Promise<unknown>,
  turn: (worker: Worker, person: P) => Promise<T>,
  ended: (person: P, turned: Turned<T>) => void,
): Lanes {
  const most = Math.max(1, (navigator.hardwareConcurrency || 2) - 1);
  const workers = new Set<Worker>();
  let stopped = false;
  let next = 0;

  const start = (): Worker => {
    const worker = startWorker();
    workers.add(worker);
    begin(worker).catch(() => {});
    return worker;
  };
  const end = (worker: Worker): void => {
    workers.delete(worker);
    worker.stop();
  };

  async function lane(): Promise<void> {
    let worker: Worker | undefined;
    while (next < people.length && !stopped) {
      const person = people[next++]!;
      worker ??= start();
      try {
        const value = await within(LONGEST, turn(worker, person));
        if (!stopped) ended(person, { value });
      } catch (error) {
        end(worker);
        worker = undefined;
        if (stopped) return;
        // Never the message: it may hold a person's text.
        const detail = error instanceof Error ? error.name : 'unknown';
        ended(person, { died: { why: error instanceof Late ? 'tooLong' : 'died', detail } });
      }
    }
    if (worker) end(worker);
  }

  const lanes = Math.max(1, Math.min(most, Math.ceil(people.length / WORTH_A_WORKER)));
  return {
    whole: Promise.all(Array.from({ length: lanes }, lane)).then(() => {}),
    stop() {
      stopped = true;
      for (const worker of workers) end(worker);
    },
  };
}

function within<T>(milliseconds: number, promise: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout>;
  const late = new Promise<never>((_, fail) => {
    timer = setTimeout(() => fail(new Late()), milliseconds);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}

import { availableParallelism } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import type { Door } from '../door.ts';
import { EXIT } from '../exits.ts';
import { openPool } from './pool.ts';
import { connectionOf, QUEUE, reach } from './queue.ts';
import type { Task, Turn } from './turn.ts';
import { poolOf } from './turnPool.ts';

export interface WorkerOptions {
  queue: string;
  concurrency?: number;
  timeLimit: number;
  memory: number;
  once?: boolean;
}

/**
 * A worker holds a job for so long without a sign of life before the queue gives it to another. The pool works in
 * threads of its own, so this process always has time to give that sign. Milliseconds.
 */
const HELD = 10_000;

/** Takes people from the queue until asked to stop. Gives the exit code. */
export async function worker(given: WorkerOptions, { tell, print }: Door): Promise<number> {
  const shown = await reach(given.queue);
  const { Worker } = await import('bullmq');
  const threads = given.concurrency ?? availableParallelism();
  const pool = await openPool(poolOf(threads, given));
  let done = 0;
  const bull = new Worker<Task, Turn>(
    QUEUE,
    async ({ data }) => {
      const ended = await pool.run(data);
      // Thrown, so that the queue tries again and at last keeps it among the failed.
      if (!ended.ok) throw new Error(`${ended.why} ${ended.detail}`.trim());
      done++;
      return ended.result;
    },
    {
      connection: connectionOf(given.queue),
      concurrency: threads,
      lockDuration: HELD,
      stalledInterval: HELD / 2,
      // A worker that dies takes at most so many turns with it before the job is called dead.
      maxStalledCount: 2,
    },
  );
  bull.on('error', () => {});
  await bull.waitUntilReady();
  print(tell.say('cli.clinic.workerReady', { queue: shown }));
  const asked = new Promise<void>((end) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end());
  });
  await (given.once ? Promise.race([asked, emptied(given.queue)]) : asked);
  // Finishes what it holds.
  await bull.close();
  await pool.close();
  print(tell.say('cli.clinic.workerDone', { n: done }));
  return EXIT.done;
}

/** What waits, what is to be tried again, and what anyone holds: a worker that dies gives its people back. */
const LEFT = ['wait', 'delayed', 'active'] as const;
const LOOK_EVERY = 250;

/** Resolves when nobody is left in the queue, as far as it is known: not while the server cannot be reached. */
async function emptied(url: string): Promise<void> {
  const { Queue } = await import('bullmq');
  const queue = new Queue(QUEUE, { connection: connectionOf(url) });
  queue.on('error', () => {});
  while ((await queue.getJobCountByTypes(...LEFT)) > 0) await setTimeout(LOOK_EVERY);
  await queue.close();
}

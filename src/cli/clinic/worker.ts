import { availableParallelism } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import type { Queue } from 'bullmq';
import type { Door } from '../door.ts';
import { EXIT } from '../exits.ts';
import { type Ended, openPool } from './pool.ts';
import { connectionOf, letGo, QUEUE, reach, watch } from './queue.ts';
import type { Task, Turn } from './turn.ts';
import { poolOf } from './turnPool.ts';

export interface WorkerOptions {
  queue: string;
  /** Seconds for which its server may be away. */
  queueWait: number;
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

/** Takes people from the queue until asked to stop, or until its server is gone. Gives the exit code. */
export async function worker(given: WorkerOptions, { tell, print, complain }: Door): Promise<number> {
  const shown = await reach(given.queue);
  const { Queue, Worker } = await import('bullmq');
  const server = await watch(given.queue, given.queueWait);
  const threads = given.concurrency ?? availableParallelism();
  const pool = await openPool(poolOf(threads, given));
  const held = new Set<Promise<Ended<Turn>>>();
  let done = 0;
  const connection = connectionOf(given.queue);
  const bull = new Worker<Task, Turn>(
    QUEUE,
    async ({ data }) => {
      const turn = pool.run(data);
      held.add(turn);
      const ended = await turn.finally(() => held.delete(turn));
      // Thrown, so that the queue tries again and at last keeps it among the failed.
      if (!ended.ok) throw new Error(`${ended.why} ${ended.detail}`.trim());
      done++;
      return ended.result;
    },
    {
      connection,
      concurrency: threads,
      lockDuration: HELD,
      stalledInterval: HELD / 2,
      // A worker that dies takes at most so many turns with it before the job is called dead.
      maxStalledCount: 2,
    },
  );
  bull.on('error', () => {});
  const asked = new Promise<'asked'>((end) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end('asked'));
  });
  await Promise.race([bull.waitUntilReady(), asked, server.gone]);
  print(tell.say('cli.clinic.workerReady', { queue: shown, seconds: given.queueWait }));
  const queue = new Queue(QUEUE, { connection });
  queue.on('error', () => {});
  let open = true;
  const how = await Promise.race([asked, server.gone, ...(given.once ? [emptied(queue, () => open)] : [])]);
  open = false;
  // Finishes what it holds; whether a server that is away still hears of it is not waited for.
  const closed = bull.close();
  const left = how === 'gone' ? how : await Promise.race([closed, server.away()]);
  await Promise.all(held);
  if (left === undefined) await queue.close();
  else letGo(bull, queue);
  server.leave();
  await pool.close();
  print(tell.say('cli.clinic.workerDone', { n: done }));
  if (how !== 'gone') return EXIT.done;
  complain(tell.say('cli.clinic.workerAlone', { queue: shown, seconds: given.queueWait }));
  return EXIT.partly;
}

/** What waits, what is to be tried again, and what anyone holds: a worker that dies gives its people back. */
const LEFT = ['wait', 'delayed', 'active'] as const;
const LOOK_EVERY = 250;

/** Resolves when nobody is left in the queue, as far as it is known: not while the server cannot be reached. */
async function emptied(queue: Queue, open: () => boolean): Promise<'emptied'> {
  while (open() && (await queue.getJobCountByTypes(...LEFT)) > 0) await setTimeout(LOOK_EVERY);
  return 'emptied';
}

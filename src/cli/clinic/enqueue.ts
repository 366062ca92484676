import type { Job, Queue, QueueEvents } from 'bullmq';
import { fingerprint } from '../../bytes/hash.ts';
import { DEATHS, type Death, type Ended } from './pool.ts';
import { connectionOf, letGo, QUEUE, watch } from './queue.ts';
import type { Task, Turn } from './turn.ts';

/** A person's turn is tried so often; after the last the job lies among the failed: the queue's dead letters. */
const ATTEMPTS = 3;
const BACKOFF = 500;
/**
 * An event can be lost where a connection breaks, so now and then the jobs themselves are looked at: after so many milliseconds at
 * least, and so many times as long as a look takes, as ten thousand people are as many questions.
 */
const LOOK_EVERY = 2_000;
const SHARE_OF_TIME = 20;
const STEP = 50;

/**
 * Puts every task into the queue and tells each result as workers somewhere bring it. A job may be worked on twice where a
 * worker dies, and its outputs are the same both times. `stop`: ends the waiting, and takes back what nobody began. `wait`:
 * seconds for which the server may be away. Gives whether it stayed; if not, who was not reached is left.
 */
export async function throughQueue(
  { url, wait }: { url: string; wait: number },
  tasks: readonly Task[],
  onEnd: (task: Task, ended: Ended<Turn>) => void,
  stop: () => boolean,
): Promise<boolean> {
  const server = await watch(url, wait);
  const { Queue, QueueEvents } = await import('bullmq');
  const connection = connectionOf(url);
  const queue = new Queue<Task, Turn>(QUEUE, { connection });
  const events = new QueueEvents(QUEUE, { connection });
  queue.on('error', () => {});
  events.on('error', () => {});
  let over = false;
  // An answer that a server no longer gives is not waited for, neither at the limit nor once asked to stop.
  const leftAlone = async (): Promise<'away'> => {
    while (!stop() && !over) await new Promise((soon) => setTimeout(soon, STEP));
    return server.away();
  };
  const work = workOn(queue, events, tasks, onEnd, () => over || stop());
  const how = await Promise.race([work, server.gone, leftAlone()]);
  over = true;
  if (how !== 'done') {
    work.catch(() => {});
    letGo(events, queue);
  }
  server.leave();
  return how !== 'gone';
}

async function workOn(
  queue: Queue<Task, Turn>,
  events: QueueEvents,
  tasks: readonly Task[],
  onEnd: (task: Task, ended: Ended<Turn>) => void,
  stop: () => boolean,
): Promise<'done'> {
  await events.waitUntilReady();
  const waiting = new Map<string, Task>();
  const begun = Date.now().toString(36);
  const end = (id: string, ended: Ended<Turn>): void => {
    const task = waiting.get(id);
    if (!task) return;
    waiting.delete(id);
    onEnd(task, ended);
  };
  events.on('completed', ({ jobId, returnvalue }) => end(jobId, { ok: true, result: returnvalue as unknown as Turn }));
  const failed = (id: string, reason: string): void => end(id, { ok: false, ...deathIn(reason) });

  // One id a person and run: put in twice, it stays one job. A colon would be the library's own mark.
  const jobs = tasks.map((task) => {
    const jobId = `${begun}-${fingerprint(`${task.out}\n${task.person.stem}`).slice(0, 24)}`;
    waiting.set(jobId, task);
    return {
      name: 'person',
      data: task,
      opts: {
        jobId,
        attempts: ATTEMPTS,
        backoff: { type: 'fixed', delay: BACKOFF },
        removeOnComplete: { age: 3600 },
        // What failed for good stays to be looked at.
        removeOnFail: false,
      },
    };
  });
  await queue.addBulk(jobs);
  const lookAt = async (ids: readonly string[]): Promise<void> => {
    for (const id of ids.filter((one) => waiting.has(one))) {
      const job: Job<Task, Turn> | undefined = await queue.getJob(id);
      if (job?.finishedOn === undefined) continue;
      if (await job.isCompleted()) end(id, { ok: true, result: job.returnvalue });
      else if (await job.isFailed()) failed(id, job.failedReason ?? '');
    }
  };
  // `failed` is told at every attempt; whether it was the last, the job itself knows.
  events.on('failed', ({ jobId }) => void lookAt([jobId]).catch(() => {}));
  let next = Date.now() + LOOK_EVERY;
  while (waiting.size > 0 && !stop()) {
    await new Promise((soon) => setTimeout(soon, STEP));
    const begun = Date.now();
    if (begun < next) continue;
    await lookAt([...waiting.keys()]);
    next = Date.now() + Math.max(LOOK_EVERY, (Date.now() - begun) * SHARE_OF_TIME);
  }
  // All asked in one go: one by one, a thousand people are two thousand answers to wait for. What a worker holds is locked, and stays.
  await Promise.all([...waiting.keys()].map((id) => queue.remove(id).catch(() => 0)));
  await events.close();
  await queue.close();
  return 'done';
}

/** How a worker tells the queue what ended a person's turn. Anything else is the queue's own reason. */
function deathIn(reason: string): Death {
  const [why = '', ...detail] = reason.split(' ');
  return DEATHS.includes(why as Death['why'])
    ? { why: why as Death['why'], detail: detail.join(' ') }
    : { why: 'died', detail: reason.slice(0, 120) };
}

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { type Ended, runAll } from '../../src/cli/clinic/pool.ts';

const folder = mkdtempSync(join(tmpdir(), 'daybands-pool-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const filename = join(folder, 'worker.mjs');
writeFileSync(
  filename,
  `const hoard = [];
const cell = new Int32Array(new SharedArrayBuffer(4));
export function work(task) {
  if (task === 'leave') process.exit(3);
  if (task === 'throw') throw Object.assign(new Error('out of cheese'), { code: 'ECHEESE' });
  if (task === 'for ever') for (;;) Atomics.wait(cell, 0, 0, 10);
  if (task === 'hoard') for (;;) hoard.push(Array(1e5).fill(task));
  if (task === 'never') return new Promise(() => {});
  return task + ' done';
}
`,
);

async function endings(tasks: string[], threads: number, stop?: () => boolean): Promise<Record<string, Ended<string>>> {
  const reports: [string, Ended<string>][] = [];
  const options = { filename, threads, timeLimit: 2_000, memoryLimit: 64 };
  await runAll<string, string>(tasks, options, (task, ended) => reports.push([task, ended]), stop);
  expect(reports.map(([task]) => task).sort(), 'each task is told once').toEqual([...tasks].sort());
  return Object.fromEntries(reports);
}

test.each([1, 2])('with %i threads, a worker that dies takes only its own task with it', async (threads) => {
  const plain = Array.from({ length: 12 }, (_, i) => `task ${i}`);
  const bad = ['leave', 'throw', 'for ever', 'hoard', 'never'];
  // Bad ones among the plain, the first and the last of all included.
  const tasks = [
    bad[0]!,
    ...plain.slice(0, 4),
    bad[1]!,
    bad[2]!,
    ...plain.slice(4, 8),
    bad[3]!,
    ...plain.slice(8),
    bad[4]!,
  ];
  const ended = await endings(tasks, threads);
  for (const task of plain) expect(ended[task]).toEqual({ ok: true, result: `${task} done` });
  // The pool learns of a thread that leaves without a word only when its time is up.
  expect(ended.leave).toMatchObject({ ok: false });
  expect(ended.throw).toEqual({ ok: false, why: 'died', detail: 'Error' });
  expect(ended['for ever']).toMatchObject({ ok: false, why: 'tooLong' });
  expect(ended.never).toMatchObject({ ok: false, why: 'tooLong' });
  expect(ended.hoard).toMatchObject({ ok: false, why: 'tooMuchMemory' });
});

test('asked to stop, it begins nothing more', async () => {
  const reports: string[] = [];
  const tasks = Array.from({ length: 50 }, (_, i) => `task ${i}`);
  const options = { filename, threads: 2, timeLimit: 2_000, memoryLimit: 64 };
  await runAll<string, string>(
    tasks,
    options,
    (task) => reports.push(task),
    () => reports.length >= 3,
  );
  expect(reports.length).toBeGreaterThanOrEqual(3);
  expect(reports.length).toBeLessThanOrEqual(5);
});

test('without a task it starts no thread', async () => {
  expect(await endings([], 2)).toEqual({});
});

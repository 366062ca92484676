import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { Queue } from 'bullmq';
import { describe, expect, onTestFinished } from 'vitest';
import { QUEUE } from '../../src/cli/clinic/queue.ts';
import { writePeople } from '../support/people.ts';
import { needs } from '../support/tools.ts';
import { clinic, ended, expectWhole, LARGE, papersIn, reachedIn, start, until, worklistOf } from './clinicRun.ts';
import { listed, scratch } from './run.ts';

const SMALL = { days: 2, step: 30 };
const DATE = ['--date', '2026-06-01'];

/** A port that was free a moment ago. */
const freePort = (): Promise<number> =>
  new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => done(port));
    });
  });

const servers = new Map<string, ChildProcess>();

/** What a program has said so far. */
function speaking(child: ChildProcess) {
  const said = { out: '', err: '' };
  for (const name of ['out', 'err'] as const) {
    child[`std${name}`]!.on('data', (data) => {
      said[name] += String(data);
    });
  }
  return { child, out: () => said.out, err: () => said.err };
}

/** A Redis server of its own for one test, without a disk. */
async function redis(folder: string): Promise<string> {
  const port = await freePort();
  const args = ['--port', String(port), '--bind', '127.0.0.1', '--save', '', '--appendonly', 'no', '--dir', folder];
  const server = spawn('redis-server', args, { stdio: ['ignore', 'pipe', 'inherit'] });
  onTestFinished(() => void server.kill('SIGKILL'));
  servers.set(`redis://127.0.0.1:${port}`, server);
  let said = '';
  server.stdout.on('data', (data) => {
    said += String(data);
  });
  await until(() => said.includes('Ready to accept connections'), 'a Redis server');
  return `redis://127.0.0.1:${port}`;
}

async function worker(folder: string, queue: string): Promise<ChildProcess> {
  const child = start(folder, 'worker', '--queue', queue, '--concurrency', '1');
  let said = '';
  child.stdout!.on('data', (data) => {
    said += String(data);
  });
  await until(() => said.includes('Waiting for work'), 'a worker');
  return child;
}

describe('with a redis-server from Debian’s packages', () => {
  const test = needs('redis-server');
  test('a worker killed half-way: nobody is lost, nobody is told twice', async () => {
    const folder = scratch();
    writePeople(join(folder, 'in'), 12, SMALL);
    const queue = await redis(folder);
    const [first, second] = [await worker(folder, queue), await worker(folder, queue)];
    const run = start(folder, 'clinic', 'in', '--out', 'out', '--queue', queue, ...DATE);
    const people = (): number => reachedIn(join(folder, 'out'));
    await until(() => people() >= 3, 'a few people');
    first.kill('SIGKILL');
    expect(await ended(run)).toBe(0);
    expectWhole(join(folder, 'out'));
    const lines = worklistOf(join(folder, 'out'));
    expect(lines.map(({ Code }) => Code).sort()).toEqual(listed(join(folder, 'in')));
    // The same papers as without a queue.
    expect(clinic(folder, 'clinic', 'in', '--out', 'alone', ...DATE).exit).toBe(0);
    expect([...papersIn(join(folder, 'out'))]).toEqual([...papersIn(join(folder, 'alone'))]);

    // What cannot be done is tried again, and then lies among the dead letters.
    const [host, port] = [new URL(queue).hostname, Number(new URL(queue).port)];
    const jobs = new Queue(QUEUE, { connection: { host, port } });
    const dead = await jobs.add('person', {}, { jobId: 'poison', attempts: 3 });
    let state = '';
    for (let i = 0; i < 200 && state !== 'failed'; i++) {
      await new Promise((soon) => setTimeout(soon, 50));
      state = await dead.getState();
    }
    expect(state).toBe('failed');
    expect((await jobs.getJob('poison'))?.attemptsMade).toBe(3);
    await jobs.close();

    // Asked to stop, a worker ends what it holds.
    second.kill('SIGTERM');
    expect(await ended(second)).toBe(0);
  }, 180_000);

  test('a worker with --once ends when nobody is left; who cannot be worked on stands on the worklist with the reason', async () => {
    const folder = scratch();
    writePeople(join(folder, 'in'), 5, SMALL);
    // More than the worker may have once it is taken apart.
    mkdirSync(join(folder, 'in/P-large'));
    writeFileSync(join(folder, 'in/P-large/list.json'), LARGE);
    const queue = await redis(folder);
    const run = start(folder, 'clinic', 'in', '--out', 'out', '--queue', queue, ...DATE);
    const jobs = new Queue(QUEUE, { connection: { host: '127.0.0.1', port: Number(new URL(queue).port) } });
    let waiting = 0;
    for (let i = 0; i < 400 && waiting < 6; i++) {
      await new Promise((soon) => setTimeout(soon, 50));
      waiting = await jobs.getWaitingCount();
    }
    expect(waiting).toBe(6);

    // Those that wait for another try are left too: it ends only when they have had it.
    const once = ['worker', '--queue', queue, '--once', '--concurrency', '1', '--memory', '96'];
    const worked = clinic(folder, ...once);
    expect(worked.exit, worked.err).toBe(0);
    expect(worked.out).toContain('5 people worked on');
    expect(await ended(run)).toBe(2);
    const [first, ...rest] = worklistOf(join(folder, 'out'));
    expect(first).toMatchObject({ Code: 'P-large', Folder: '' });
    expect(first!.Why).toContain('took more memory');
    expect(rest.filter(({ Folder }) => Folder !== '').length).toBe(5);
    const dead = await jobs.getFailed();
    expect(dead.map(({ attemptsMade }) => attemptsMade)).toEqual([3]);
    await jobs.close();

    // Nobody there: it ends at once.
    const idle = clinic(folder, ...once);
    expect([idle.exit, idle.err]).toEqual([0, '']);
    expect(idle.out).toContain('0 people worked on');
  }, 120_000);

  test('three workers, one killed and one slow: nobody is lost, nobody is told twice, and every byte is that of one machine', async () => {
    const folder = scratch();
    writePeople(join(folder, 'in'), 9, SMALL);
    const queue = await redis(folder);
    const workers = [await worker(folder, queue), await worker(folder, queue), await worker(folder, queue)];
    const run = start(folder, 'clinic', 'in', '--out', 'out', '--queue', queue, ...DATE);
    const people = (): number => reachedIn(join(folder, 'out'));
    await until(() => people() >= 2, 'a few people');
    workers[0]!.kill('SIGKILL');
    // Stopped for a while, as on a machine that has too much to do.
    workers[1]!.kill('SIGSTOP');
    setTimeout(() => workers[1]!.kill('SIGCONT'), 3_000);
    expect(await ended(run)).toBe(0);
    expectWhole(join(folder, 'out'));
    expect(
      worklistOf(join(folder, 'out'))
        .map(({ Code }) => Code)
        .sort(),
    ).toEqual(listed(join(folder, 'in')));
    expect(clinic(folder, 'clinic', 'in', '--out', 'alone', ...DATE).exit).toBe(0);
    expect([...papersIn(join(folder, 'out'))]).toEqual([...papersIn(join(folder, 'alone'))]);
    for (const name of ['worklist.csv', 'worklist.html', 'worklist.pdf', 'measures.csv', 'run-1-of-1.json']) {
      expect(readFileSync(join(folder, 'out', name)).equals(readFileSync(join(folder, 'alone', name))), name).toBe(
        true,
      );
    }
  }, 180_000);

  test.each(['SIGKILL', 'SIGSTOP'] as const)(
    'a server that is gone by %s ends a run and a worker after the limit that they told',
    async (signal) => {
      const folder = scratch();
      writePeople(join(folder, 'in'), 3, SMALL);
      const queue = await redis(folder);
      const wait = ['--queue', queue, '--queue-wait', '2'];
      const run = speaking(start(folder, 'clinic', 'in', '--out', 'out', ...wait, ...DATE));
      const work = speaking(start(folder, 'worker', ...wait, '--concurrency', '1'));
      await until(() => run.out().includes('away for 2 seconds (--queue-wait) the run ends'), 'the limit of a run');
      await until(() => work.out().includes('away for 2 seconds (--queue-wait) this worker ends'), 'that of a worker');
      servers.get(queue)!.kill(signal);
      expect(await ended(work.child), work.err()).toBe(2);
      expect(work.err()).toMatch(/has not answered for 2 seconds, so this worker ends\. .* begin the worker again/);
      expect(await ended(run.child), run.err()).toBe(2);
      expect(run.err()).toMatch(/has not answered for 2 seconds\. .* run the same command again; or leave --queue out/);
      expect(worklistOf(join(folder, 'out')).length).toBe(3);
      // What it says to do does it.
      expect(clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE).exit).toBe(0);
    },
    120_000,
  );

  test('a run that is asked to stop takes back everyone of its own whom nobody began, and nobody else', async () => {
    const folder = scratch();
    writePeople(join(folder, 'in'), 40, SMALL);
    const queue = await redis(folder);
    const jobs = new Queue(QUEUE, { connection: { host: '127.0.0.1', port: Number(new URL(queue).port) } });
    onTestFinished(() => jobs.close());
    await jobs.add('person', {}, { jobId: 'of-another-run' });
    const run = speaking(start(folder, 'clinic', 'in', '--out', 'out', '--queue', queue, ...DATE));
    while ((await jobs.getWaitingCount()) < 41) await new Promise((soon) => setTimeout(soon, 50));
    run.child.kill('SIGTERM');
    expect(await ended(run.child), run.err()).toBe(2);
    expect((await jobs.getJobs()).map(({ id }) => id)).toEqual(['of-another-run']);
  }, 120_000);

  test.each([true, false])(
    'one signal ends a run and a worker, whether the server is there (%s) or not',
    async (there) => {
      const folder = scratch();
      writePeople(join(folder, 'in'), 3, SMALL);
      const queue = await redis(folder);
      const run = speaking(start(folder, 'clinic', 'in', '--out', 'out', '--queue', queue, ...DATE));
      await until(() => run.out().includes('Everyone goes into the queue'), 'a run that waits');
      const jobs = new Queue(QUEUE, { connection: { host: '127.0.0.1', port: Number(new URL(queue).port) } });
      while ((await jobs.getWaitingCount()) < 3) await new Promise((soon) => setTimeout(soon, 50));
      run.child.kill('SIGSTOP');
      await jobs.obliterate({ force: true });
      await jobs.close();
      const terminated = speaking(start(folder, 'worker', '--queue', queue, '--concurrency', '1'));
      const interrupted = speaking(start(folder, 'worker', '--queue', queue, '--concurrency', '1'));
      for (const { out } of [terminated, interrupted])
        await until(() => out().includes('Waiting for work'), 'a worker');
      run.child.kill('SIGCONT');
      if (!there) servers.get(queue)!.kill('SIGKILL');
      for (const { child } of [run, terminated]) child.kill('SIGTERM');
      interrupted.child.kill('SIGINT');
      expect(await ended(run.child), run.err()).toBe(2);
      expect(run.err()).toContain('ended early (asked to stop)');
      expect(await ended(terminated.child), terminated.err()).toBe(0);
      expect(await ended(interrupted.child), interrupted.err()).toBe(0);
    },
    120_000,
  );
});

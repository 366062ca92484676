import { join } from 'node:path';
import { threadFile } from '../home.ts';
import { standsAt } from '../plainFile.ts';
import type { Ended, PoolOptions } from './pool.ts';
import type { Task, Turn } from './turn.ts';

/** Taken apart, JSON takes up to so many times its bytes; a packed file opens to so many times its own. */
const TAKEN_APART = 16;
const UNPACKED = 50;
const PACKED = /\.(zip|gz|xlsx|xls|ods)$/i;

/** What the process runs: one turn, then it ends; without us there is nobody to do it for. */
const ONE_TURN = `const { work } = await import(process.argv[1]);
process.once('disconnect', () => process.exit());
process.once('message', async (task) => process.send(await work(task), () => process.disconnect()));`;

/** Of one person's turn: seconds, and megabytes of heap. */
interface Limits {
  timeLimit: number;
  memory: number;
}

/**
 * What a pool of so many threads needs to give people their turns. The engine ends a thread that runs out of memory
 * between two steps of the program. Where one step, such as parsing one piece of JSON, takes all there is, it ends the
 * whole process, and everyone's run with it. So whoever has files large enough for that is worked on in a process of
 * their own.
 */
export function poolOf(threads: number, { timeLimit, memory }: Limits): PoolOptions<Task, Turn> {
  const most = timeLimit * 1000;
  return {
    filename: threadFile(),
    threads,
    timeLimit: most,
    memoryLimit: memory,
    exempt: {
      is: ({ person, folder }) =>
        person.files.reduce((sum, name) => sum + opened(join(folder, name)), 0) * TAKEN_APART > memory * 1e6,
      run: (task) => alone(task, most, memory),
    },
  };
}

function opened(path: string): number {
  const size = standsAt(path)?.size ?? 0;
  return PACKED.test(path) ? size * UNPACKED : size;
}

function alone(task: Task, timeLimit: number, memoryLimit: number): Promise<Ended<Turn>> {
  const args = [`--max-old-space-size=${memoryLimit}`, '--input-type=module', '-e', ONE_TURN, threadFile()];
  // Loaded here: every start would pay for what hardly any run needs.
  const { spawn } = process.getBuiltinModule('node:child_process');
  const child = spawn(process.execPath, [...process.execArgv, ...args], {
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    serialization: 'advanced',
  });
  return new Promise((end) => {
    let late = false;
    const timer = setTimeout(() => {
      late = true;
      child.kill('SIGKILL');
    }, timeLimit);
    child.once('message', (result) => end({ ok: true, result: result as Turn }));
    child.once('error', ({ name }) => end({ ok: false, why: 'died', detail: name }));
    child.once('exit', (code, signal) => {
      clearTimeout(timer);
      // After a message this changes nothing. The engine aborts itself when its memory is used up.
      const why = late ? 'tooLong' : signal === 'SIGABRT' ? 'tooMuchMemory' : 'died';
      end({ ok: false, why, detail: signal ?? String(code) });
    });
    // A process that could not be started is told by `error` or `exit`.
    child.send(task, () => {});
  });
}

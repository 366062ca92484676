import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { command, home, listed, scratch } from './run.ts';

/** Ends the command after `after` ms, wherever it happens to be. */
function stopped(folder: string, after: number, signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
  return new Promise((done) => {
    const child = spawn(
      process.execPath,
      [command, 'report', join(home, 'sample-data/steady-fortnight'), '--out', 'r'],
      {
        cwd: folder,
        stdio: 'ignore',
      },
    );
    const timer = setTimeout(() => child.kill(signal), after);
    child.on('exit', () => {
      clearTimeout(timer);
      done();
    });
  });
}

test.each(['SIGKILL', 'SIGTERM'] as const)('stopped anywhere by %s, what has its name is whole', async (signal) => {
  for (const after of [150, 300, 400, 450, 500, 550, 600, 700]) {
    const folder = scratch();
    await stopped(folder, after, signal);
    const named = listed(join(folder, 'r')).filter((name) => !name.startsWith('.'));
    for (const name of named) {
      const bytes = readFileSync(join(folder, 'r', name));
      if (name.endsWith('.pdf')) expect(bytes.subarray(-6).toString(), name).toContain('%%EOF');
      if (name.endsWith('.json')) expect(() => JSON.parse(bytes.toString()), name).not.toThrow();
    }
    // Only a stop that cannot be caught may leave something hidden behind.
    if (signal === 'SIGTERM') expect(listed(join(folder, 'r')).filter((name) => name.startsWith('.'))).toEqual([]);
  }
});

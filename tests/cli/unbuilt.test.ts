import { spawnSync } from 'node:child_process';
import { cpSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { home, listed, plainExport, scratch } from './run.ts';

/** The tree as it is cloned, with packages and without what is built. */
function clone(): string {
  const folder = scratch();
  for (const part of ['src', 'templates', 'package.json'])
    cpSync(join(home, part), join(folder, part), { recursive: true });
  symlinkSync(join(home, 'node_modules'), join(folder, 'node_modules'));
  return folder;
}

test('run from its source before it was built, the command says what to run', () => {
  const tree = clone();
  const work = scratch({ 'a.csv': plainExport(2) });
  const source = (...args: string[]) => {
    const command = ['--import', import.meta.resolve('tsx'), join(tree, 'src/cli/daybands.ts'), ...args];
    const ran = spawnSync(process.execPath, command, { cwd: work, encoding: 'utf8', timeout: 60_000 });
    return { exit: ran.status, err: ran.stderr.split('\n')[0] };
  };
  expect(source('report', 'a.csv', '--zone', 'Europe/Madrid')).toEqual({
    exit: 64,
    err: '"dist/fonts/IBMPlexSans-Regular.ttf" is missing, a part of this program. Build it first: npm run build',
  });
  expect(source('clinic', '.')).toEqual({ exit: 64, err: expect.stringContaining('npm run build') });
  expect(listed(work)).toEqual(['a.csv']);
});

test('whoever reads along may leave early', () => {
  const work = scratch({ 'a.csv': plainExport(2) });
  const line = `node ${join(home, 'dist/daybands.js')} report a.csv --out papers | head -n 1`;
  const ran = spawnSync('sh', ['-c', line], { cwd: work, encoding: 'utf8', timeout: 60_000 });
  expect(ran.stderr).toBe('');
  expect(listed(join(work, 'papers')).length).toBeGreaterThan(2);
});

import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { WrongUse } from '../../src/cli/exits.ts';
import { ownFile, threadFile, words } from '../../src/cli/home.ts';
import { wrongUse } from '../../src/cli/tell.ts';
import { teller } from '../../src/papers/teller.ts';
import { home, listed, plainExport, scratch } from './run.ts';

test.each<[string, () => unknown, string]>([
  [
    'a face that the build copies',
    () => ownFile('dist/fonts/Nowhere.ttf'),
    '"dist/fonts/Nowhere.ttf" is missing, a part of this program. Build it first: npm run build',
  ],
  [
    'a thread',
    threadFile,
    'A folder is worked on by the built command only. Build it (npm run build), then run: node dist/daybands.js clinic',
  ],
])('run from its source before it was built, the command says what to run: %s', (_, ask, said) => {
  let thrown: unknown;
  try {
    ask();
  } catch (error) {
    thrown = error;
  }
  expect(wrongUse(teller(words('en')), thrown as WrongUse)).toBe(said);
});

test('whoever reads along may leave early', () => {
  const work = scratch({ 'a.csv': plainExport(2) });
  const line = `node ${join(home, 'dist/daybands.js')} report a.csv --out papers | head -n 1`;
  const ran = spawnSync('sh', ['-c', line], { cwd: work, encoding: 'utf8', timeout: 60_000 });
  expect(ran.stderr).toBe('');
  expect(listed(join(work, 'papers')).length).toBeGreaterThan(2);
});

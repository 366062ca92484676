import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { home } from '../cli/run.ts';
import { numberedRows } from '../support/numberedRows.ts';

const rows = numberedRows('docs/reliability.md');

test('promises are numbered without a gap', () => {
  expect(rows.map(([number]) => Number(number))).toEqual(rows.map((_, i) => i + 1));
  expect(rows.length).toBeGreaterThan(10);
});

test.each(rows.map((row) => [`${row[0]} ${row[1]}`, row] as const))('%s', (_, row) => {
  const [, promise, file, title] = row as [string, string, string, string];
  expect(promise).not.toBe('');
  const path = join(home, file.replaceAll('`', ''));
  expect(existsSync(path), path).toBe(true);
  const text = readFileSync(path, 'utf8');
  expect(
    ["'", '"', '`'].some((mark) => text.includes(`${mark}${title}${mark}`)),
    title,
  ).toBe(true);
});

test('every test that the page names is there', () => {
  const named = readFileSync(join(home, 'docs/reliability.md'), 'utf8').match(/(?<=`)tests\/[\w/.-]+\.ts(?=`)/g)!;
  expect(named.length).toBeGreaterThan(50);
  expect(named.filter((path) => !existsSync(join(home, path)))).toEqual([]);
});

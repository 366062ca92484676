import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { home } from '../cli/run.ts';

/** Each test that a line of the page names, by its file and its own name. */
const named = readFileSync(join(home, 'docs/reliability.md'), 'utf8')
  .split('### Where each kind of misreading is tested')[1]!
  .split('\n## ')[0]!
  .split('\n')
  .filter((line) => /^\| .* \| `/.test(line))
  .flatMap((line) => line.split('|')[2]!.split('<br>'))
  .map((cell) => /^\s*`([^`]+)`(?:: (.+?))?\s*$/.exec(cell)!.slice(1) as [string, string | undefined]);

test('a page names many', () => {
  expect(named.length).toBeGreaterThan(50);
});

test.each(named)('%s: %s', (file, title) => {
  const path = join(home, file);
  expect(existsSync(path), path).toBe(true);
  const text = readFileSync(path, 'utf8');
  if (title)
    expect(
      ["'", '"', '`'].some((mark) => text.includes(`${mark}${title}${mark}`)),
      title,
    ).toBe(true);
});

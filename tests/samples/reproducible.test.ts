import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const kept = new URL('../../sample-data/', import.meta.url).pathname;
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sample-data-'));
  execFileSync(process.execPath, ['--import', 'tsx', join(kept, 'make.ts'), folder], { cwd: join(kept, '..') });
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true }));

const stories = readdirSync(kept, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'making' && entry.name !== 'hostile')
  .map((entry) => entry.name);

describe('sample data', () => {
  it('has every story the generator makes, and no other', () => {
    expect(readdirSync(folder).sort()).toEqual([...stories].sort());
  });
  it.each(stories)('%s comes out byte for byte', (story) => {
    const filesIn = (place: string): string[] =>
      readdirSync(place, { recursive: true, encoding: 'utf8' }).filter((name) => statSync(join(place, name)).isFile());
    const names = filesIn(join(folder, story));
    // Written by hand, or by the program of an earlier visit's files (tests/golden/stories.test.ts).
    const stored = filesIn(join(kept, story)).filter(
      (name) => !/README\.md$|settings\.json$|-agreed\.txt$|-visit-/.test(name),
    );
    expect(names.sort()).toEqual(stored.sort());
    for (const name of names) {
      expect(readFileSync(join(folder, story, name)).equals(readFileSync(join(kept, story, name))), name).toBe(true);
    }
  });
  it.each(stories)('%s says that it is invented', (story) => {
    expect(readFileSync(join(kept, story, 'README.md'), 'utf8')).toContain('**Invented.**');
  });
});

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const ROOM = new URL('../../src/timeline/', import.meta.url);
const FILES = ['changeHours', 'shownClock', 'days', 'duplicates', 'index', 'notes', 'order', 'twoSensors'];

it('has words for every issue the timeline can raise', () => {
  const words = JSON.parse(readFileSync(new URL('../../templates/words/en.json', import.meta.url), 'utf8'));
  const codes = new Set<string>();
  for (const name of FILES) {
    const code = readFileSync(new URL(`${name}.ts`, ROOM), 'utf8');
    for (const [, one] of code.matchAll(/'([a-z]+(?:-[a-z0-9]+)+)'/g)) codes.add(one!);
  }
  codes.delete('set-aside');
  expect(codes.size).toBeGreaterThan(15);
  for (const code of codes) expect(words.issues[code], code).toBeTypeOf('string');
});

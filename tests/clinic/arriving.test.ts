import { expect, test } from 'vitest';
import { doneAfter, look, type Marks, since, type Watched } from '../../src/clinic/arriving.ts';

const marks = (all: Record<string, string>): Marks => new Map(Object.entries(all));
const SETTLE = 15;

/** What a watch that looks once a second would run over, second by second; it runs as soon as anything has settled. */
function runsOf(seen: readonly Record<string, string>[]): Record<number, string[]> {
  let watched: Watched = new Map();
  let done: Marks = new Map();
  const runs: Record<number, string[]> = {};
  for (let second = 0; second < 100; second++) {
    watched = look(watched, marks(seen[Math.min(second, seen.length - 1)]!), second);
    const { moving, settled } = since(done, watched, second, SETTLE);
    if (settled.size === 0) continue;
    runs[second] = [...settled].sort();
    done = doneAfter(done, watched, moving);
  }
  return runs;
}

test('a file is read once, when it has not changed for a while', () => {
  expect(runsOf([{ a: '1' }])).toEqual({ 15: ['a'] });
});

test('a file that grows is not read before it has come to rest, and nobody waits for it', () => {
  const growing = Array.from({ length: 30 }, (_, i) => ({ a: '1', b: String(i) }));
  expect(runsOf(growing)).toEqual({ 15: ['a'], 44: ['b'] });
});

test('a copy that pauses for long is read again when it goes on', () => {
  const paused = [...Array.from({ length: 20 }, () => ({ a: 'half' })), { a: 'whole' }];
  expect(runsOf(paused)).toEqual({ 15: ['a'], 35: ['a'] });
});

test('a share that is away for a moment changes nothing; a file that stays away is gone', () => {
  const there = { a: '1' };
  const away = [...Array.from({ length: 20 }, () => there), {}, {}, {}, there];
  expect(runsOf(away)).toEqual({ 15: ['a'] });
  expect(runsOf([...Array.from({ length: 20 }, () => there), {}])).toEqual({ 15: ['a'], 35: ['a'] });
});

test('what was changed and put back needs no run', () => {
  expect(runsOf([...Array.from({ length: 20 }, () => ({ a: '1' })), { a: '2' }, { a: '1' }])).toEqual({ 15: ['a'] });
});

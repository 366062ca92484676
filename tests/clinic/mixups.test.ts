import { expect, test } from 'vitest';
import { findMixUps, personMark } from '../../src/clinic/mixups.ts';
import { outcome } from './outcomes.ts';

const person = (code: string, inputHashes: string[], names: string[] = []) =>
  outcome({ code, stem: code, inputHashes, persons: names.map(personMark) });

test.each([
  ['everyone has files of their own', [person('A', ['1'], ['A']), person('B', ['2'], ['B'])], {}],
  [
    'one file lies with two people',
    [person('A', ['1', '3']), person('B', ['2', '3']), person('C', ['4'])],
    { A: ['sameFile', ['B']], B: ['sameFile', ['A']] },
  ],
  [
    'two people’s files name one person',
    [person('A', ['1'], ['Ann']), person('B', ['2'], [' ann '])],
    { A: ['samePerson', ['B']], B: ['samePerson', ['A']] },
  ],
  [
    'a file names the code of someone else',
    [person('A', ['1'], ['B']), person('B', ['2']), person('C', ['3'], ['C'])],
    { A: ['otherCode', ['B']], B: ['otherCode', ['A']] },
  ],
  ['a file names a code nobody here has', [person('A', ['1'], ['X-9']), person('B', ['2'])], {}],
])('%s', (_, outcomes, expected) => {
  const found = Object.fromEntries([...findMixUps(outcomes)].map(([stem, { why, others }]) => [stem, [why, others]]));
  expect(found).toEqual(expected);
});

test('a mark does not hold the name', () => {
  expect(personMark('Ann')).toMatch(/^[0-9a-f]{16}$/);
});

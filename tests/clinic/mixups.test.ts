import { expect, test } from 'vitest';
import { findMixUps, personMark } from '../../src/clinic/mixups.ts';
import { tracesOf } from '../../src/clinic/traces.ts';
import type { Outcome } from '../../src/model/clinic.ts';
import { outcome } from './outcomes.ts';

const person = (code: string, inputHashes: string[], names: string[] = []) =>
  outcome({ code, stem: code, inputHashes, persons: names.map(personMark) });

const traced = (code: string, traces: string[]): Outcome => ({ ...person(code, [code]), traces });

test.each<[string, Outcome[], Record<string, [string, string[]]>]>([
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
  [
    'the same day of readings under two people',
    [traced('A', ['day:1', 'day:2']), traced('B', ['day:2']), traced('C', ['day:3'])],
    { A: ['sameReadings', ['B']], B: ['sameReadings', ['A']] },
  ],
  ['files that leave no trace', [traced('A', []), traced('B', [])], {}],
  [
    'a reading or two lie with two people',
    [traced('A', ['example:1']), traced('B', ['example:1'])],
    { A: ['sameFile', ['B']], B: ['sameFile', ['A']] },
  ],
  ['a form with an example in it lies with many', ['A', 'B', 'C'].map((code) => traced(code, ['example:1'])), {}],
  [
    'a file names someone whom the manifest gives another code',
    [person('A', ['1'], ['Berg, Ann']), { ...person('B', ['2']), own: ['B', 'Ann Berg'].map(personMark) }],
    { A: ['otherCode', ['B']], B: ['otherCode', ['A']] },
  ],
  [
    'two people of one name, as the manifest says',
    ['A', 'B'].map((code) => ({ ...person(code, [code], ['Ann Berg']), own: [code, 'Ann Berg'].map(personMark) })),
    {},
  ],
  [
    'a name that a program gives everyone',
    [person('A', ['1'], ['User 1']), person('B', ['2'], ['user1', 'User 1'])],
    {},
  ],
])('%s', (_, outcomes, expected) => {
  const found = Object.fromEntries([...findMixUps(outcomes)].map(([stem, { why, others }]) => [stem, [why, others]]));
  expect(found).toEqual(expected);
});

test('of many who share a file, each is told a few', () => {
  const all = Array.from({ length: 3000 }, (_, i) => person(`P-${i}`, ['1']));
  expect(findMixUps(all).get('P-7')).toEqual({
    why: 'sameFile',
    others: ['P-0', 'P-1', 'P-2', 'P-3', '…'],
    file: 'P-1/sensor.csv',
  });
});

test('an empty file, a header and a text leave no trace', () => {
  const ledger = { rows: 1, used: 0, duplicate: 0, setAside: 0, notes: 1, ignored: 0 };
  const file = { name: 'notes.txt', kind: 'table', hash: '0'.repeat(64), choices: [], persons: [], ledger };
  expect(tracesOf([file], null)).toEqual([]);
  expect(tracesOf([{ ...file, ledger: { ...ledger, used: 2 } }], null)).toEqual(['example:0000000000000000']);
  expect(tracesOf([{ ...file, ledger: { ...ledger, used: 3 } }], null)).toEqual(['file:0000000000000000']);
});

test('a mark does not hold the name', () => {
  expect(personMark('Ann')).toMatch(/^[0-9a-f]{16}$/);
});

import { expect, test } from 'vitest';
import { fingerprint } from '../../src/bytes/hash.ts';
import { keyOf, stillGood } from '../../src/clinic/resume.ts';
import { parseOutcome } from '../../src/schemas/outcome.ts';
import { facts, outcome } from './outcomes.ts';

test('the hash is SHA-256 (FIPS 180-4, example "abc")', () => {
  expect(fingerprint('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

const finished = outcome({ outputs: [{ name: 'a.pdf', bytes: 1, sha256: 'aa' }] });
const refusal = outcome({ facts: null, outputs: [], refusals: [{ key: 'issues.no-readings', params: {} }] });

test.each([
  ['the same key, every file whole', finished, 'key', { 'a.pdf': 'aa' }, true],
  ['nothing there from before', null, 'key', {}, false],
  ['another key: input, settings, words or version', finished, 'other', { 'a.pdf': 'aa' }, false],
  ['a file cut short or changed', finished, 'key', { 'a.pdf': 'ab' }, false],
  ['a file taken away', finished, 'key', {}, false],
  ['a refusal of the same day', refusal, 'key', {}, true],
  ['a refusal of another day may have been about the future', { ...refusal, printed: '2026-02-28' }, 'key', {}, false],
  ['withdrawn papers', { ...refusal, key: '' }, 'key', {}, false],
  ['a record of another shape', { ...finished, schema: 2 as never }, 'key', { 'a.pdf': 'aa' }, false],
])('%s', (_, last, key, present, good) => {
  expect(stillGood(last, key, new Map(Object.entries(present)), '2026-03-01')).toBe(good);
});

test('the key follows everything the outputs depend on, and the order of names alone does not', () => {
  const base = {
    version: '1',
    wordsHash: 'w',
    inputs: [['a', 'x']] as [string, string][],
    wanted: { b: 1, a: { d: 2, c: 3 } },
  };
  const key = keyOf(base);
  expect(keyOf({ ...base, wanted: { a: { c: 3, d: 2 }, b: 1 } })).toBe(key);
  for (const other of [
    { ...base, version: '2' },
    { ...base, wordsHash: 'v' },
    { ...base, inputs: [['a', 'y']] as [string, string][] },
    { ...base, inputs: [['b', 'x']] as [string, string][] },
    { ...base, wanted: { b: 2, a: { d: 2, c: 3 } } },
  ]) {
    expect(keyOf(other)).not.toBe(key);
  }
});

test('what a run remembers keeps its order when it is read: kept from before, a person gives the same bytes as read now', () => {
  const { schema, facts: now, ...rest } = outcome({ before: [facts()] });
  // An order that the shape does not have.
  const text = JSON.stringify({ ...rest, facts: now, schema });
  expect(JSON.stringify(parseOutcome(JSON.parse(text)))).toBe(text);
});

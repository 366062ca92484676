import { expect, test } from 'vitest';
import type { CompareChoice, Marked } from '../../src/model/settings.ts';
import { visitOf } from '../../src/papers/visitOf.ts';
import { settled } from '../../src/papers/wanted.ts';
import { analysed, comparedWith, exported, held, leftBy } from '../support/visiting.ts';

const changed = '2026-03-14 new routine';

test.each([
  ['visit files', ['earlier', 'more'], ['earlier', 'more']],
  ['one folder of them', 'earlier', 'earlier'],
  ['as many days before', 'previous', undefined],
  ['dates', '2026-01-01..2026-01-14', undefined],
])('a change that is asked for elsewhere beside %s in the settings', (_, compare, left) => {
  expect(settled({ compare }, { changed }).asked).toEqual({
    changed,
    ...(left === undefined ? {} : { compare: left }),
  });
});

test('what is asked to be compared with stands instead of both', () => {
  expect(settled({ compare: 'earlier', changed }, { compare: 'previous' }).asked).toEqual({ compare: 'previous' });
});

test('beside earlier visits a change goes into the visit file, and the visits stay what is compared with', () => {
  const then = leftBy(exported({ seed: 1 }, 0, 14));
  const marked = { date: '2026-01-30', text: 'new routine' } as Marked;
  const compare: CompareChoice = { with: 'visits', visits: [then], changed: marked };
  const analysis = held(analysed(exported({ seed: 1 }, 20, 34), { ...comparedWith(then), compare }));
  const { measures } = analysis;
  expect(visitOf(analysis, 'x.json', null).changed).toEqual([{ on: marked.date, what: marked.text }]);
  expect(measures.thenAndNow.ok && measures.thenAndNow.value.with).toBe('visit');
});

import { expect, test } from 'vitest';
import type { FindingId } from '../../src/findings/index.ts';
import type { NoteLog } from '../../src/model/occasions.ts';
import { notesWorthWriting } from '../../src/topics/index.ts';
import { measuresWith } from '../support/measures.ts';

/** A log in which nothing is wanting. */
const FULL: NoteLog = {
  days: 10,
  noted: 10,
  byKind: [
    { kind: 'meal', days: 7, notes: 30 },
    { kind: 'insulin', days: 7, notes: 30 },
  ],
  byHour: [],
  mealDays: { morning: 7, evening: 7 },
  medication: [],
  meals: 30,
  withCarbs: 21,
  late: 9,
  sessions: 0,
  withMinutes: 0,
  shortBouts: 0,
};

function wishes(log: Partial<NoteLog>, ...topics: FindingId[]): string[] {
  const measures = measuresWith({ noteLog: { ok: true, value: { ...FULL, ...log }, n: 30, of: 'notes' } });
  return notesWorthWriting(
    measures,
    topics.map((id) => ({ id, rule: 'lows-first' })),
  );
}

const few = (kind: 'meal' | 'insulin') => FULL.byKind.map((one) => (one.kind === kind ? { ...one, days: 6 } : one));

test.each<[string, Partial<NoteLog>, FindingId[], string[]]>([
  ['no note at all', { noted: 0 }, ['very-low'], ['any']],
  ['no topic', { noted: 0 }, [], []],
  ['a well-noted log of lows wants exercise', {}, ['very-low'], ['exercise']],
  ['meals on 7 of 10 days are noted well, on 6 not', { byKind: few('meal') }, ['very-low'], ['exercise', 'meal']],
  ['insulin on 6 of 10 days', { byKind: few('insulin') }, ['long-lows'], ['exercise', 'insulin-time']],
  ['grams with 20 of 30 meals', { withCarbs: 20 }, ['lows-seen'], ['exercise', 'grams']],
  ['no meal, no grams', { meals: 0, withCarbs: 0, late: 0 }, ['lows-seen'], ['exercise']],
  ['movement noted asks for what was eaten with it', { sessions: 2, withMinutes: 2 }, ['very-low'], ['extra-food']],
  ['and for its minutes', { sessions: 10, withMinutes: 6 }, ['very-low'], ['extra-food', 'minutes']],
  ['minutes with 7 of 10', { sessions: 10, withMinutes: 7 }, ['very-low'], ['extra-food']],
  [
    'the night wants the evening',
    { mealDays: { morning: 7, evening: 6 } },
    ['lows-at-night'],
    ['evening-meal', 'exercise'],
  ],
  ['mornings', { mealDays: { evening: 7 } }, ['dawn-rise'], ['morning-meal']],
  ['one note in three late', { late: 10 }, ['long-very-high'], ['on-time']],
  ['fewer late', { late: 9 }, ['long-very-high'], []],
  [
    'hours very high want the insulin first',
    { byKind: [...few('insulin'), ...few('meal')] },
    ['long-very-high'],
    ['insulin-time'],
  ],
  ['nobody is taken to inject who noted no insulin', { byKind: [] }, ['long-very-high'], ['meal']],
  [
    'never more than three',
    { byKind: few('insulin').slice(1), withCarbs: 0 },
    ['very-low'],
    ['exercise', 'insulin-time', 'meal'],
  ],
])('%s', (_, log, topics, expected) => {
  expect(wishes(log, ...topics)).toEqual(expected);
});

test('a log that could not be measured wants nothing', () => {
  expect(notesWorthWriting(measuresWith(), [{ id: 'very-low', rule: 'very-low-first' }])).toEqual([]);
});

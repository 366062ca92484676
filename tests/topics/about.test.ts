import { expect, test } from 'vitest';
import { targetSets } from '../../src/targets/index.ts';
import { aboutOf, topicsToChoose } from '../../src/topics/index.ts';
import { bandsLike, seenCoverage } from '../support/examples/measures.ts';
import { measuresWith } from '../support/measures.ts';
import { heldOnly } from './order.ts';

const found = heldOnly('very-low/episodes', 'lows-at-night/repeated', 'long-very-high', 'wide-spread');
const measures = measuresWith({ timeInBands: bandsLike({ 'in-range': 80, high: 20 }), coverage: seenCoverage(14, 1) });
const about = (topic?: string) => aboutOf(found, measures, targetSets.adult, topic === undefined ? {} : { topic });

test('every finding that holds and could lead can be chosen, once, in the order of the rules', () => {
  expect(topicsToChoose(found).map(({ id }) => id)).toEqual([
    'very-low',
    'lows-at-night',
    'long-very-high',
    'wide-spread',
  ]);
});

test('a topic that was chosen stands alone, beside what the rules gave', () => {
  expect(about('wide-spread')).toEqual({
    topics: [{ id: 'wide-spread', rule: 'chosen' }],
    topicByRule: { id: 'very-low', rule: 'very-low-first' },
    issues: [],
  });
});

test('what the rules give is no choice, whoever asks for it', () => {
  expect(about('very-low')).toEqual(about());
  expect(about()).not.toHaveProperty('topicByRule');
});

test('a topic that was not found is told with those that were, and the rules hold', () => {
  expect(about('dawn-rise')).toEqual({
    topics: about().topics,
    issues: [
      {
        code: 'topic-not-found',
        level: 'warning',
        actual: 'dawn-rise',
        expected: ['very-low', 'lows-at-night', 'long-very-high', 'wide-spread'],
      },
    ],
  });
});

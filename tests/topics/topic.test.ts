import { expect, test } from 'vitest';
import { type FindingId, type Found, findings } from '../../src/findings/index.ts';
import { topics } from '../../src/topics/index.ts';

/** A finding that holds, in one of its ways. */
type Held = FindingId | `${FindingId}/${string}`;

const held = (...ids: Held[]): Found[] =>
  findings.map(({ id }) => {
    const name = ids.find((each) => each.split('/')[0] === id);
    if (name === undefined) return { id, look: { case: 'absent' } };
    const variant = name.split('/')[1];
    return { id, look: { case: 'holds', params: {}, where: [], ...(variant === undefined ? {} : { variant }) } };
  });

/** Order: lows, data, highs, spread, what works (Szmuilowicz & Aleppo 2022, Postgrad Med 134:743-751, abstract). */
test.each<[string, Held[], string[]]>([
  ['nothing', [], []],
  ['lows before highs', ['long-very-high', 'lows-at-night/repeated'], ['lows-at-night lows-first']],
  [
    'a second only beside a very low',
    ['very-low', 'lows-at-night/repeated', 'long-very-high'],
    ['very-low very-low-first', 'lows-at-night second-beside-very-low'],
  ],
  [
    'a single night after highs of hours',
    ['long-very-high', 'lows-at-night/once'],
    ['long-very-high highs-after-lows'],
  ],
  ['a single night before other highs', ['high-after-window', 'lows-at-night/once'], ['lows-at-night single-low']],
  ['a reading or two at night is no topic', ['lows-at-night/brief', 'dawn-rise'], ['dawn-rise highs-after-lows']],
  ['a low by day before other highs', ['high-after-window', 'lows-seen'], ['lows-seen single-low']],
  ['very low alone', ['very-low'], ['very-low very-low-first']],
  ['what works is no second topic', ['very-low', 'best-window'], ['very-low very-low-first']],
  ['data before highs', ['high-after-window', 'not-enough-data'], ['not-enough-data data-before-highs']],
  ['lows before data', ['not-enough-data', 'lows-clustered'], ['lows-clustered lows-first']],
  ['time in range below its goal', ['time-in-range/missed', 'wide-spread'], ['time-in-range highs-after-lows']],
  ['time in range that meets it is no topic', ['time-in-range/met', 'wide-spread'], ['wide-spread spread-last']],
  ['what works, at last', ['time-in-range/met', 'best-days'], ['best-days repeat-what-works']],
])('%s', (_, ids, expected) => {
  expect(topics(held(...ids)).map(({ id, rule }) => `${id} ${rule}`)).toEqual(expected);
});

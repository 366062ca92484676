import { describe, expect, test } from 'vitest';
import type { Furthest } from '../../src/model/topics.ts';
import { targetSets } from '../../src/targets/index.ts';
import { checkTopicOrder, furthestFromGoal, topics, USUAL_ORDER } from '../../src/topics/index.ts';
import { changed } from '../findings/looked.ts';
import { bandsLike, openBandsLike, seenCoverage } from '../support/examples/measures.ts';
import { measuresWith } from '../support/measures.ts';
import { type Held, heldOnly, ROWS } from './order.ts';

const topicsOf = (held: Held[], furthest: Furthest | null = null) =>
  topics(heldOnly(...held), furthest).map(({ id, rule }) => `${id} ${rule}`);

describe('each row of the order leads in its example', () => {
  test('there is one a row', () => expect(ROWS).toHaveLength(USUAL_ORDER.length));

  test.each(ROWS.map((one, i) => [`${i + 1} ${USUAL_ORDER[i]!.topic}: ${one.example}`, one, i] as const))(
    '%s',
    (_, { held, furthest }, i) => {
      const { topic, rule } = USUAL_ORDER[i]!;
      expect(topicsOf(held, furthest)[0]).toBe(`${topic.split('/')[0]} ${rule}`);
      // And not without it: what it rests on is what chooses it.
      expect(
        topicsOf(
          held.filter((each) => each !== topic),
          furthest,
        )[0],
      ).not.toBe(`${topic.split('/')[0]} ${rule}`);
    },
  );
});

test.each<[string, Held[], string[]]>([
  ['nothing', [], []],
  [
    'a second only beside a very low',
    ['very-low/episodes', 'lows-at-night/repeated', 'long-very-high'],
    ['very-low very-low-first', 'lows-at-night second-beside-very-low'],
  ],
  ['very low alone', ['very-low/episodes'], ['very-low very-low-first']],
  ['what works is no second topic', ['very-low/episodes', 'best-window'], ['very-low very-low-first']],
  ['a reading or two at night is no topic', ['lows-at-night/brief', 'dawn-rise'], ['dawn-rise highs-after-lows']],
  ['time in range that meets it is no topic', ['time-in-range/met', 'wide-spread'], ['wide-spread spread-last']],
])('%s', (_, held, expected) => {
  expect(topicsOf(held)).toEqual(expected);
});

/** Points of a hundred beyond the goals of Battelino 2019 (70 % in range, 25 % high, 5 % very high) and 36 % of Monnier 2017. */
describe('what lies furthest beyond its goal', () => {
  const judged = (
    [inRange, high]: [number, number],
    cv: number,
    { open = false, full = true }: { open?: boolean; full?: boolean } = {},
  ) => {
    const goals = [
      { of: 'in-range' as const, op: '>' as const, share: 0.7, met: inRange > 70 },
      { of: 'high' as const, op: '<' as const, share: 0.25, met: high < 25 },
      { of: 'low' as const, op: '<' as const, share: 0.04, met: 100 - inRange - high < 4 },
    ];
    const minutes = { 'in-range': inRange, high, low: 100 - inRange - high };
    const measures = measuresWith({
      timeInBands: (open ? openBandsLike : bandsLike)(minutes, ...goals),
      cv: { ok: true, value: cv, n: 4032, of: 'readings' },
      coverage: seenCoverage(full ? 14 : 9, 1),
    });
    return furthestFromGoal(measures, targetSets.adult);
  };

  test.each<[string, [number, number], number, 'highs' | 'spread' | null]>([
    ['8 points in range and 12 above against a CV of 36', [62, 37], 36, 'highs'],
    ['the same against a CV of 48, 12 points over', [62, 37], 48, 'highs'],
    ['the same against a CV of 48.1', [62, 37], 48.1, 'spread'],
    ['all met', [75, 22], 35, null],
    ['all met but the CV', [75, 22], 36.1, 'spread'],
    ['lows over their goal are no matter of this', [80, 10], 30, null],
  ])('%s', (_, shares, cv, expected) => {
    expect(judged(shares, cv)).toBe(expected);
  });

  test('nothing where too little was seen to judge', () => {
    expect(judged([51, 44], 50, { open: true })).toBeNull();
    expect(judged([75, 22], 50, { full: false })).toBeNull();
  });
});

describe('far beyond a goal in few readings (ours: 20 points in 48 hours)', () => {
  const far = (inRange: number, high: number, hours: number) => {
    const goals = [
      { of: 'in-range' as const, op: '>' as const, share: 0.7, met: inRange > 70 },
      { of: 'high' as const, op: '<' as const, share: 0.25, met: high < 25 },
      { of: 'low' as const, op: '<' as const, share: 0.04, met: 100 - inRange - high < 4 },
    ];
    const timeInBands = openBandsLike({ 'in-range': inRange, high, low: 100 - inRange - high }, ...goals);
    const coverage = changed(seenCoverage(9, 0.3), (value) => ({ ...value, hours }));
    return furthestFromGoal(measuresWith({ timeInBands, coverage }), targetSets.adult);
  };

  test.each([
    [16, 84, 68, 'far-highs'],
    [50, 44, 48, 'far-highs'],
    [51, 44, 48, null],
    [52, 46, 48, 'far-highs'],
    [16, 84, 47.9, null],
  ])('%d % in range, %d % above, %d hours', (inRange, high, hours, expected) => {
    expect(far(inRange, high, hours)).toBe(expected);
  });
});

describe('a clinic may change the order, but not its top', () => {
  const rows = USUAL_ORDER.map((one) => ({ ...one }));
  const problems = (changed: unknown) => {
    const checked = checkTopicOrder(changed);
    return 'problems' in checked ? checked.problems : [];
  };

  test('below the locked rows anything goes', () => {
    const [first, second, ...others] = rows;
    expect(problems({ about: 'x', rows: [first, second, ...others.reverse()] })).toEqual([]);
    expect(problems({ rows: [first, second] })).toEqual([]);
    expect(problems({ rows: [first, second, { topic: 'fast-falls', rule: 'spread-last' }] })).toEqual([]);
  });

  test.each([
    ['the first left out', rows.slice(1)],
    ['a night low further down', [rows[0], rows[2], rows[1]]],
    ['another rule', [{ ...rows[0], rule: 'spread-last' }, ...rows.slice(1)]],
    ['no longer locked', [{ topic: 'very-low/episodes', rule: 'very-low-first' }, ...rows.slice(1)]],
  ])('%s is refused', (_, changed) => {
    expect(problems({ rows: changed })).toEqual(['rows[0-1] (locked: very-low/episodes, lows-at-night/repeated)']);
  });

  test.each([
    ['a misspelt topic', { topic: 'dawn-rises', rule: 'spread-last' }],
    ['a misspelt rule', { topic: 'dawn-rise', rule: 'spread-lasts' }],
    ['an unknown measure of distance', { topic: 'dawn-rise', rule: 'spread-last', furthest: 'lows' }],
    ['an unknown name', { topic: 'dawn-rise', rule: 'spread-last', first: true }],
    ['no row', 7],
  ])('%s is named', (_, row) => {
    expect(problems({ rows: [...rows, row] })).toEqual([`rows[${rows.length}]`]);
  });

  test('a file without rows is refused', () => {
    expect(problems([])).toEqual(['rows']);
    expect(problems(null)).toEqual(['rows']);
  });
});

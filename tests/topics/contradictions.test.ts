import { expect, test } from 'vitest';
import type { FindingId, Found } from '../../src/findings/index.ts';
import type { Evidence } from '../../src/model/look.ts';
import { targetSets } from '../../src/targets/index.ts';
import { CONTRADICTIONS, settled } from '../../src/topics/contradictions.ts';
import { lookAll } from '../../src/topics/index.ts';
import { lowsLike } from '../support/examples/episodes.ts';
import { windowsLike } from '../support/examples/measures.ts';
import { pressedLike, thenAndNowLike } from '../support/examples/trust.ts';
import { measuresWith } from '../support/measures.ts';

const held = (id: FindingId, where: Evidence[] = [], variant?: string): Found => ({
  id,
  look: { case: 'holds', params: {}, where, ...(variant === undefined ? {} : { variant }) },
});
const heldIds = (found: Found[]): FindingId[] => found.flatMap(({ id, look }) => (look.case === 'holds' ? [id] : []));

test('no low ever gives way to anything but a graver low', () => {
  const lows: readonly FindingId[] = [
    'very-low',
    'lows-seen',
    'long-lows',
    'lows-at-night',
    'lows-clustered',
    'time-low-over-goal',
  ];
  expect(CONTRADICTIONS.map(({ yields }) => yields).filter((id) => lows.includes(id))).toEqual([]);
});

test.each(
  CONTRADICTIONS.filter(({ sameWindow }) => !sameWindow).flatMap(({ yields, to, variant }) =>
    to.map((id) => [yields, id, variant] as const),
  ),
)('%s gives way to %s, and stands alone', (yields, to, variant) => {
  expect(heldIds(settled([held(to, [], variant), held(yields)]))).toEqual([to]);
  if (variant !== undefined) expect(heldIds(settled([held(to, [], 'other'), held(yields)]))).toEqual([to, yields]);
  expect(heldIds(settled([{ id: to, look: { case: 'absent' } }, held(yields)]))).toEqual([yields]);
});

const at = (fromMinute: number, toMinute: number): Evidence[] => [
  { date: '2024-01-01' as never, fromMinute, toMinute },
];

test.each<[string, Evidence[], Evidence[], string[]]>([
  ['the same hours', at(480, 720), at(600, 840), ['high-after-window']],
  ['hours that only touch', at(480, 720), at(720, 960), ['high-after-window', 'best-window']],
  ['other hours', at(0, 240), at(720, 960), ['high-after-window', 'best-window']],
])('the best window beside the hardest: %s', (_, best, hard, expected) => {
  expect(heldIds(settled([held('high-after-window', hard), held('best-window', best)]))).toEqual(expected);
});

test('pressure on the sensor takes no low away', () => {
  const measures = measuresWith({ lows: lowsLike({ level: 2, startMinute: 180 }), pressedLows: pressedLike(1, 1) });
  const ids = heldIds(lookAll(measures, targetSets.adult));
  for (const id of ['very-low', 'lows-seen', 'pressed-lows'] satisfies FindingId[]) expect(ids).toContain(id);
});

test('a change that is told is not also called chance', () => {
  const measures = measuresWith({
    thenAndNow: thenAndNowLike({ of: 'low', before: 0.05, now: 0.01, change: -0.04, verdict: 'more-than-noise' }),
    windows: windowsLike(14, 8),
  });
  const ids = heldIds(lookAll(measures, targetSets.adult));
  expect(ids).toContain('changed-lows');
  expect(ids.includes('change-not-told')).toBe(false);
});

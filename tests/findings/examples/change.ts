import type { Change, Compared } from '../../../src/model/thenAndNow.ts';
import { thenAndNowLike } from '../../support/examples/trust.ts';
import type { Examples } from './index.ts';

export const change = {
  'changed-lows': [
    ['more time low', changeLike('low', 0.01, 0.04, 'more-than-noise'), 'holds'],
    ['not told apart', changeLike('low', 0.01, 0.04, 'not-told-apart'), 'absent'],
    ['fewer lows', changeLike('lows', 6, 1, 'more-than-noise'), 'holds'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
    ['no readings before', { thenAndNow: { ok: false, why: 'no-earlier-readings' } }, 'untold'],
  ],
  'goals-then-and-now': [
    ['low met at 3.9 %, not met at 4.1 %', goalsLike(['low', 0.039, 0.041]), 'holds'],
    ['low met at 3.9 % and at 3.99 %', goalsLike(['low', 0.039, 0.0399]), 'absent'],
    ['met now', goalsLike(['in-range', 0.69, 0.71]), 'holds'],
    ['a low no longer met before a range that is', goalsLike(['low', 0.03, 0.05], ['in-range', 0.69, 0.71]), 'holds'],
    ['too few days to judge', goalsLike(), 'absent'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
    ['no readings before', { thenAndNow: { ok: false, why: 'no-earlier-readings' } }, 'untold'],
  ],
  'changed-range': [
    ['12 points more in range', changeLike('in-range', 0.55, 0.67, 'more-than-noise'), 'holds'],
    ['not told apart', changeLike('in-range', 0.55, 0.67, 'not-told-apart'), 'absent'],
    ['only time high', changeLike('high', 0.3, 0.4, 'more-than-noise'), 'holds'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
  ],
  'change-not-told': [
    ['not told apart', { thenAndNow: thenAndNowLike() }, 'holds'],
    [
      'too few days',
      { thenAndNow: thenAndNowLike({ of: 'in-range', verdict: 'cannot-tell', why: 'few-days' }) },
      'holds',
    ],
    ['more than noise', { thenAndNow: thenAndNowLike({ of: 'in-range', verdict: 'more-than-noise' }) }, 'absent'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
  ],
} satisfies Partial<Examples>;

/** Two periods of which one number went from one value to another. */
function changeLike(of: Compared, before: number, now: number, verdict: Change['verdict']) {
  return { thenAndNow: thenAndNowLike({ of, before, now, change: now - before, verdict }) };
}

/** Two periods and what they make of the adult goals of 4 % low and 70 % in range. */
function goalsLike(...given: [of: 'low' | 'in-range', before: number, now: number][]) {
  const thenAndNow = thenAndNowLike();
  if (!thenAndNow.ok) throw new Error(thenAndNow.why);
  const goals = given.map(([of, before, now]) => {
    const share = of === 'low' ? 0.04 : 0.7;
    const met = (value: number) => (of === 'low' ? value < share : value > share);
    return { of, share, before, now, metBefore: met(before), metNow: met(now) };
  });
  return { thenAndNow: { ...thenAndNow, value: { ...thenAndNow.value, goals } } };
}

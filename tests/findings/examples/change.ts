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

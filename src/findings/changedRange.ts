import type { Change } from '../model/thenAndNow.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';
import { count, limit, share, word } from './quantities.ts';
import { thenAndNowLike } from './trustExamples.ts';

const OF = ['in-range', 'high', 'very-high'] as const;

/** Time in range, or else time high, changed by more than day-to-day noise. */
export const changedRange: Finding = {
  id: 'changed-range',
  source: '5 points of time in range: Battelino 2019, Diabetes Care 42:1593-1603; others ours',
  look({ thenAndNow }) {
    if (!thenAndNow.ok) return quiet(thenAndNow.why);
    const { changes, before, now } = thenAndNow.value;
    const told = OF.flatMap((of) => changes.find((each) => each.of === of && each.verdict === 'more-than-noise') ?? []);
    const first: Change | undefined = told[0];
    if (!first) return absent;
    const way = first.change > 0 ? 'more' : 'less';
    return holds(
      {
        of: word(first.of === 'in-range' ? 'range' : 'high'),
        way: word(way),
        before: share(first.before),
        now: share(first.now),
        from: limit('low'),
        to: limit('high'),
        limit: limit(first.of === 'very-high' ? 'very-high' : 'high'),
        thenDays: count(before.days),
        nowDays: count(now.days),
      },
      [],
      (first.of === 'in-range') === first.change > 0 ? 'toward-range' : 'away-from-range',
    );
  },
  examples: [
    [
      '12 points more in range',
      { thenAndNow: thenAndNowLike(change('in-range', 0.55, 0.67, 'more-than-noise')) },
      'holds',
    ],
    ['not told apart', { thenAndNow: thenAndNowLike(change('in-range', 0.55, 0.67, 'not-told-apart')) }, 'absent'],
    ['only time high', { thenAndNow: thenAndNowLike(change('high', 0.3, 0.4, 'more-than-noise')) }, 'holds'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
  ],
};

function change(of: Change['of'], before: number, now: number, verdict: Change['verdict']) {
  return { of, before, now, change: now - before, verdict };
}

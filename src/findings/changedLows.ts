import type { Change } from '../model/thenAndNow.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';
import { count, limit, share, word } from './quantities.ts';
import { thenAndNowLike } from './trustExamples.ts';

const OF = ['low', 'very-low', 'lows'] as const;

/** Time low, time very low or the number of lows changed by more than day-to-day noise; time low is told first. */
export const changedLows: Finding = {
  id: 'changed-lows',
  source: 'ours; smallest change that matters: ours',
  look({ thenAndNow }) {
    if (!thenAndNow.ok) return quiet(thenAndNow.why);
    const { changes, before, now } = thenAndNow.value;
    const told = OF.flatMap((of) => changes.find((each) => each.of === of && each.verdict === 'more-than-noise') ?? []);
    const first: Change | undefined = told[0];
    if (!first) return absent;
    const way = first.change > 0 ? 'more' : 'less';
    const isTime = first.of !== 'lows';
    return holds(
      {
        of: word(first.of),
        way: word(way),
        before: isTime ? share(first.before) : count(first.before),
        now: isTime ? share(first.now) : count(first.now),
        limit: limit(first.of === 'very-low' ? 'very-low' : 'low'),
        thenDays: count(before.days),
        nowDays: count(now.days),
      },
      [],
      way,
    );
  },
  examples: [
    ['more time low', { thenAndNow: thenAndNowLike(change('low', 0.01, 0.04, 'more-than-noise')) }, 'holds'],
    ['not told apart', { thenAndNow: thenAndNowLike(change('low', 0.01, 0.04, 'not-told-apart')) }, 'absent'],
    ['fewer lows', { thenAndNow: thenAndNowLike(change('lows', 6, 1, 'more-than-noise')) }, 'holds'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
    ['no readings before', { thenAndNow: { ok: false, why: 'no-earlier-readings' } }, 'untold'],
  ],
};

function change(of: Change['of'], before: number, now: number, verdict: Change['verdict']) {
  return { of, before, now, change: now - before, verdict };
}

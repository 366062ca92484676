import { changeLike, firstChanged } from './changed.ts';
import { type Finding, holds } from './finding.ts';
import { limit, share, word } from './quantities.ts';

const OF = ['in-range', 'high', 'very-high'] as const;

/** Time in range, or else time high, changed by more than day-to-day noise. */
export const changedRange: Finding = {
  id: 'changed-range',
  source: '5 points of time in range: Battelino 2019, Diabetes Care 42:1593-1603; others ours',
  look(measures) {
    const told = firstChanged(measures, OF);
    if ('look' in told) return told.look;
    const { change, way, lengths } = told;
    const isRange = change.of === 'in-range';
    return holds(
      {
        of: word(isRange ? 'range' : 'high'),
        way: word(way),
        before: share(change.before),
        now: share(change.now),
        from: limit('low'),
        to: limit('high'),
        limit: limit(change.of === 'very-high' ? 'very-high' : 'high'),
        ...lengths,
      },
      [],
      isRange === change.change > 0 ? 'toward-range' : 'away-from-range',
    );
  },
  examples: [
    ['12 points more in range', changeLike('in-range', 0.55, 0.67, 'more-than-noise'), 'holds'],
    ['not told apart', changeLike('in-range', 0.55, 0.67, 'not-told-apart'), 'absent'],
    ['only time high', changeLike('high', 0.3, 0.4, 'more-than-noise'), 'holds'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
  ],
};

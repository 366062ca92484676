import { changeLike, firstChanged } from './changed.ts';
import { type Finding, holds } from './finding.ts';
import { count, limit, share, word } from './quantities.ts';

const OF = ['low', 'very-low', 'lows'] as const;

/** Time low, time very low or the number of lows changed by more than day-to-day noise; time low is told first. */
export const changedLows: Finding = {
  id: 'changed-lows',
  source: 'ours; smallest change that matters: ours',
  look(measures) {
    const told = firstChanged(measures, OF);
    if ('look' in told) return told.look;
    const { change, way, lengths } = told;
    const isTime = change.of !== 'lows';
    return holds(
      {
        of: word(change.of),
        way: word(way),
        before: isTime ? share(change.before) : count(change.before),
        now: isTime ? share(change.now) : count(change.now),
        limit: limit(change.of === 'very-low' ? 'very-low' : 'low'),
        ...lengths,
      },
      [],
      way,
    );
  },
  examples: [
    ['more time low', changeLike('low', 0.01, 0.04, 'more-than-noise'), 'holds'],
    ['not told apart', changeLike('low', 0.01, 0.04, 'not-told-apart'), 'absent'],
    ['fewer lows', changeLike('lows', 6, 1, 'more-than-noise'), 'holds'],
    ['nothing to compare with', { thenAndNow: { ok: false, why: 'not-asked' } }, 'absent'],
    ['no readings before', { thenAndNow: { ok: false, why: 'no-earlier-readings' } }, 'untold'],
  ],
};

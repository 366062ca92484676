import { firstChanged } from './evidence/changed.ts';
import { count, limit, share, word } from './evidence/quantities.ts';
import { type Finding, holds } from './finding.ts';

const OF = ['low', 'very-low', 'lows'] as const;

/** Time low, time very low or the number of lows changed by more than day-to-day noise; time low is told first. */
export const changedLows: Finding<'changed-lows'> = {
  id: 'changed-lows',
  source: 'ours; smallest change that matters: ours',
  look(measures) {
    const first = firstChanged(measures, OF);
    if ('look' in first) return first.look;
    const { change, way, lengths } = first;
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
};

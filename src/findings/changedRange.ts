import { firstChanged } from './evidence/changed.ts';
import { limit, share, word } from './evidence/quantities.ts';
import { type Finding, holds } from './finding.ts';

const OF = ['in-range', 'high', 'very-high'] as const;

/** Time in range, or else time high, changed by more than day-to-day noise. */
export const changedRange: Finding<'changed-range'> = {
  id: 'changed-range',
  source: '5 points of time in range: Battelino 2019, Diabetes Care 42:1593-1603; others ours',
  look(measures) {
    const first = firstChanged(measures, OF);
    if ('look' in first) return first.look;
    const { change, way, lengths } = first;
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
};

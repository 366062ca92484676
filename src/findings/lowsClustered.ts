import type { Episode } from '../model/measures.ts';
import { beginningOf, dayNumber, daysOf, extremes } from './evidence/episodes.ts';
import { isRepeated } from './evidence/pattern.ts';
import { clock, count, dates, limit, often, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const WIDTH = 120;

/**
 * Lows that start around one clock time: within 2 hours, across midnight too, on at least 3 days and a third of the
 * days with readings. A low after midnight counts for the evening before when the window began there.
 */
export const lowsClustered: Finding<'lows-clustered'> = {
  id: 'lows-clustered',
  source: 'ours',
  look({ lows, coverage }) {
    if (!lows.ok) return untold(lows.why);
    if (!coverage.ok) return untold(coverage.why);
    const cluster = densest(lows.value.list);
    const days = coverage.value.daysWithReadings;
    if (!cluster || !isRepeated(cluster.days, days)) return absent;
    const { extreme, longest } = extremes(cluster.lows);
    const where = cluster.lows.flatMap(beginningOf);
    return holds(
      {
        from: clock(cluster.from),
        to: clock(cluster.to),
        span: word(cluster.from === cluster.to ? 'point' : 'span'),
        often: often(cluster.days, days, 'days'),
        count: count(cluster.lows.length),
        dates: dates(daysOf(where)),
        longest,
        lowest: extreme,
        limit: limit('low'),
      },
      where,
    );
  },
};

interface Cluster {
  days: number;
  from: number;
  to: number;
  lows: Episode[];
}

/** The window with most days, then most lows, then the earliest start. */
function densest(lows: readonly Episode[]): Cluster | null {
  let best: Cluster | null = null;
  for (const start of [...new Set(lows.map(({ startMinute }) => startMinute))].sort((a, b) => a - b)) {
    const after = (low: Episode): number => (low.startMinute - start + 1440) % 1440;
    const inside = lows.filter((low) => after(low) <= WIDTH);
    const days = new Set(inside.map((low) => dayNumber(low.date) - (low.startMinute < start ? 1 : 0))).size;
    if (best && (days < best.days || (days === best.days && inside.length <= best.lows.length))) continue;
    best = { days, from: start, to: (start + Math.max(...inside.map(after))) % 1440, lows: inside };
  }
  return best;
}

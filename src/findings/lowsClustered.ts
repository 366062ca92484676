import type { Episode } from '../model/measures.ts';
import { lowsLike } from './episodeExamples.ts';
import { beginningOf, dayNumber, daysOf, extremes } from './episodes.ts';
import { seenCoverage } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { isRepeated } from './pattern.ts';
import { clock, count, dates, limit, often, word } from './quantities.ts';

const WIDTH = 120;

/**
 * Lows that start around one clock time: within 2 hours, across midnight too, on at least 3 days and a third of the
 * days with readings. A low after midnight counts for the evening before when the window began there.
 */
export const lowsClustered: Finding = {
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
  examples: [
    ['3 of 9 days, 120 minutes apart', at(9, 120, 180, 240), 'holds'],
    ['3 of 9 days, 121 minutes apart', at(9, 120, 180, 241), 'absent'],
    ['3 of 10 days', at(10, 120, 180, 240), 'absent'],
    ['2 of 4 days', at(4, 120, 180), 'absent'],
    ['around midnight', at(9, 30, 1380, 1439), 'holds'],
    ['two of the three on one evening, before and after midnight', at(9, 1380, 1439, 30), 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};

function at(days: number, ...startMinutes: number[]) {
  return { lows: lowsLike(...startMinutes.map((startMinute) => ({ startMinute }))), coverage: seenCoverage(days, 1) };
}

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

import type { Instant } from '../model/glucose.ts';
import type { Gap } from '../model/timeline.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { SpellRange } from './spells.ts';

/** The larger of 20 minutes and two intervals. No consensus states a rule; this default is ours and is printed. */
export function gapRule(interval: number): number {
  return Math.max(20, 2 * interval);
}

/** Pauses longer than the rule between readings (at least one), in order, with those to the edges of the period. */
export function findGaps(
  at: Float64Array,
  spells: SpellRange[],
  period: { start: number; end: number },
  rule: number,
): Gap[] {
  const gaps: Gap[] = [];
  const add = (from: number, to: number, kind: Gap['kind']) => {
    if (to - from > rule * MINUTE_MS) {
      gaps.push({ from: from as Instant, to: to as Instant, minutes: (to - from) / MINUTE_MS, kind });
    }
  };
  const starts = new Set(spells.map(({ from }) => from));
  const count = at.length;
  add(period.start, at[0]!, 'edge');
  const long = rule * MINUTE_MS;
  for (let i = 1; i < count; i++) {
    if (at[i]! - at[i - 1]! > long) add(at[i - 1]!, at[i]!, starts.has(i) ? 'change' : 'hole');
  }
  add(at[count - 1]!, period.end, 'edge');
  return gaps;
}

import type { ReadFile } from '../model/input.ts';
import type { Settings } from '../model/settings.ts';
import type { TargetSet } from '../model/targets.ts';
import type { ComparedWith, PeriodSums } from '../model/thenAndNow.ts';
import type { Timeline } from '../model/timeline.ts';
import { addDays } from '../time/calendar.ts';
import { buildTimeline } from '../timeline/index.ts';
import { context } from './context.ts';
import { periodSums } from './daySums.ts';

/** The other side of the comparison that was asked for, from the same files, a snapshot or the period itself. */
export function comparedWithOf(
  files: ReadFile[],
  { compare, zone }: Pick<Settings, 'compare' | 'zone'>,
  { from, days }: Timeline,
  targets: TargetSet,
): ComparedWith | null {
  if (compare === undefined) return null;
  if (compare.with === 'change') return { with: 'change', date: compare.date, text: compare.text };
  if (compare.with === 'snapshot') return { with: 'snapshot', before: compare.before };
  const period =
    compare.with === 'dates'
      ? { from: compare.from, to: compare.to }
      : { from: addDays(from, -days.length), to: addDays(from, -1) };
  const { timeline } = buildTimeline(files, { period, ...(zone === undefined ? {} : { zone }) });
  return { with: compare.with, before: timeline && sumsOf(timeline, targets) };
}

/** A timeline as sums of days. */
export function sumsOf(timeline: Timeline, targets: TargetSet): PeriodSums {
  return periodSums(context(timeline, targets));
}

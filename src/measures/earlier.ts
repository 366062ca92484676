import type { Issue, ReadFile } from '../model/input.ts';
import type { Settings } from '../model/settings.ts';
import type { TargetSet } from '../model/targets.ts';
import type { ComparedWith, PeriodSums } from '../model/thenAndNow.ts';
import type { Timeline } from '../model/timeline.ts';
import type { Visit, VisitNumbers } from '../model/visits.ts';
import { targetSets } from '../targets/index.ts';
import { addDays } from '../time/calendar.ts';
import { buildTimeline } from '../timeline/index.ts';
import { inOrder } from '../visits/inOrder.ts';
import { notEarlierIssue, strangerIssue } from '../visits/issues.ts';
import { provedBy, strangerIn } from '../visits/rightPerson.ts';
import { context } from './context.ts';
import { periodSums } from './daySums.ts';
import { visitNumbers } from './visitNumbers.ts';

/** The other side of the comparison that was asked for, from the same files, the last visit or the period itself. */
export function comparedWithOf(
  files: ReadFile[],
  { compare, zone }: Pick<Settings, 'compare' | 'zone'>,
  { from, days }: Timeline,
  targets: TargetSet,
  earlier: readonly Visit[],
): ComparedWith | null {
  if (compare === undefined) return null;
  if (compare.with === 'visits') return { with: 'visit', before: earlier.at(-1)?.sums ?? null };
  if (compare.with === 'change') return { with: 'change', date: compare.date, text: compare.text };
  const period =
    compare.with === 'dates'
      ? { from: compare.from, to: compare.to }
      : { from: addDays(from, -days.length), to: addDays(from, -1) };
  const { timeline } = buildTimeline(files, { period, ...(zone === undefined ? {} : { zone }) });
  return { with: compare.with, before: timeline && sumsOf(timeline, targets) };
}

/** A timeline as sums of days. */
function sumsOf(timeline: Timeline, targets: TargetSet): PeriodSums {
  return periodSums(context(timeline, targets));
}

/** What a period leaves for a later visit: sums of its days, and the five numbers of its report; `known` as in `visitNumbers`. */
export function leftBy(
  timeline: Timeline,
  targets: TargetSet,
  known?: Parameters<typeof visitNumbers>[1],
): { sums: PeriodSums; numbers: VisitNumbers } {
  const shared = context(timeline, targets);
  return { sums: periodSums(shared), numbers: visitNumbers(shared, known) };
}

/** Earlier visits in order, whether days in both show that the last is this person's, and what is wrong with any. */
export interface EarlierVisits {
  earlier: Visit[];
  proved: boolean;
  issues: Issue[];
}

/**
 * The visit files that were given, as far as they lie before this period. A file of another person is a refusal, whichever
 * of them it is.
 */
export function earlierVisits(
  files: ReadFile[],
  { compare, zone, person }: Pick<Settings, 'compare' | 'zone' | 'person'>,
  timeline: Timeline,
): EarlierVisits {
  if (compare?.with !== 'visits') return { earlier: [], proved: true, issues: [] };
  const { earlier, notEarlier } = inOrder(compare.visits, timeline.to);
  const inData = new Set(timeline.allDays);
  const again = new Map<Visit, PeriodSums | null>();
  const issues: Issue[] = [];
  for (const visit of [...earlier, ...notEarlier]) {
    const shared = visit.sums.days.filter(({ date }) => inData.has(date));
    const now = shared.length === 0 ? null : sumsAgain(files, zone, visit, shared[0]!.date, shared.at(-1)!.date);
    again.set(visit, now);
    const stranger = strangerIn(visit, person.code, now);
    if (stranger) issues.push(strangerIssue(visit, stranger));
  }
  issues.push(...notEarlier.map(notEarlierIssue));
  const last = earlier.at(-1);
  return { earlier, proved: last === undefined || provedBy(last, again.get(last)!), issues };
}

/** Days of a visit as the readings at hand give them, on the limits that held at that visit. */
function sumsAgain(
  files: ReadFile[],
  zone: string | undefined,
  { sums }: Visit,
  from: string,
  to: string,
): PeriodSums | null {
  const { timeline } = buildTimeline(files, { period: { from, to }, ...(zone === undefined ? {} : { zone }) });
  return timeline && sumsOf(timeline, targetSets[sums.targets]);
}

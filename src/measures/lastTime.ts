import type { PeriodSums } from '../model/thenAndNow.ts';
import type { MeasureThenAndNow, TopicMeasure } from '../model/visits.ts';
import { LONGEST, plainLine } from '../schemas/plainLine.ts';
import { nightsThenAndNow, occasionsThenAndNow } from '../visits/counts.ts';
import { comparedTo } from './comparedTo.ts';
import type { Context } from './context.ts';
import { periodSums } from './daySums.ts';
import type { Measure } from './measure.ts';

/** What was agreed at the visit before, and the measure of its topic then and now. */
export const lastTime: Measure<'lastTime'> = {
  id: 'lastTime',
  source: 'Fisher 1934; Politis & Romano 1992; Daybands',
  needs: {},
  definition: {},
  compute(shared) {
    const { earlier, proved } = shared.visits;
    const visit = earlier.at(-1);
    if (visit === undefined) return { ok: false, why: 'not-asked' };
    const { sums, person, topic, topicMeasure, agreed, changed } = visit;
    const value = {
      from: sums.days[0]!.date,
      to: sums.days.at(-1)!.date,
      person,
      proved,
      topic: topic?.id ?? null,
      agreed,
      changed,
      measure: topicMeasure && thenAndNow(topicMeasure, sums, shared),
    };
    return { ok: true, value, n: sums.days.length, of: 'days' };
  },
};

function thenAndNow(measure: TopicMeasure, before: PeriodSums, shared: Context): MeasureThenAndNow | null {
  if (measure.of === 'nights-low') {
    const now = periodSums(shared);
    return { of: 'nights-low', ...nightsThenAndNow(before.days, now.days, measure.count) };
  }
  if (measure.of === 'after-note') {
    const { outcome, note, count } = measure;
    const before = shared.occasions().before.find(({ of }) => of === outcome);
    const same = before?.notes.find(({ id, name }) => id === note.id && plainLine(name, LONGEST.note) === note.name);
    return { of: 'after-note', outcome, note, ...occasionsThenAndNow(count, same?.withIt ?? null) };
  }
  const compared = comparedTo(shared, before);
  const change = compared.ok ? compared.value.changes.find(({ of }) => of === measure.of) : undefined;
  return change ? { of: measure.of, change } : null;
}

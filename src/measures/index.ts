import type { LogWords } from '../model/logbook.ts';
import type { Measures } from '../model/measures.ts';
import type { TargetSet } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { alarms } from './alarms.ts';
import { comparisons } from './comparisons.ts';
import { type Asked, type Context, context } from './context.ts';
import { corrections } from './corrections.ts';
import { coverage } from './coverage.ts';
import { curveRanges } from './curveRanges.ts';
import { cvRange } from './cvRange.ts';
import { daily } from './daily.ts';
import { dawnRise } from './dawnRise.ts';
import { highs, lows } from './episodes.ts';
import { exercise } from './exercise.ts';
import { fingersticks } from './fingersticks.ts';
import { fixedTimes } from './fixedTimes.ts';
import { gmi } from './gmi.ts';
import { hourly } from './hourly.ts';
import { insulinNoted } from './insulinNoted.ts';
import { labA1c } from './labA1c.ts';
import { lastTime } from './lastTime.ts';
import { longHighs } from './longHighs.ts';
import { lowStories } from './lowStories.ts';
import { lowsLined } from './lowsLined.ts';
import { meals } from './meals.ts';
import { mean } from './mean.ts';
import type { Measure } from './measure.ts';
import { medicinesNoted } from './medicinesNoted.ts';
import { modalDay } from './modalDay.ts';
import { nights } from './nights.ts';
import { notedBefore } from './notedBefore.ts';
import { noteLog } from './noteLog.ts';
import { oddStretches } from './oddStretches.ts';
import { overnight } from './overnight.ts';
import { pregnancy } from './pregnancy.ts';
import { pressedLows } from './pressedLows.ts';
import { rates } from './rates.ts';
import { rebounds } from './rebounds.ts';
import { remarks } from './remarks.ts';
import { sensors } from './sensors.ts';
import { cv, sd } from './spread.ts';
import { thenAndNow } from './thenAndNow.ts';
import { timeInBands } from './timeInBands.ts';
import { visitByVisit } from './visitByVisit.ts';
import { weekParts } from './weekParts.ts';
import { windows } from './windows.ts';

export type { Measures } from '../model/measures.ts';
export { type Asked, NOTHING_ASKED } from './context.ts';
export type { Measure, Needs } from './measure.ts';

/** Every measure, in the order in which they are explained. */
export const measures: { readonly [Id in keyof Measures]: Measure<Id> } = {
  coverage,
  mean,
  sd,
  cv,
  cvRange,
  gmi,
  labA1c,
  timeInBands,
  modalDay,
  curveRanges,
  hourly,
  lows,
  highs,
  longHighs,
  lowStories,
  nights,
  daily,
  windows,
  dawnRise,
  rebounds,
  overnight,
  rates,
  sensors,
  oddStretches,
  pressedLows,
  fingersticks,
  medicinesNoted,
  alarms,
  thenAndNow,
  noteLog,
  meals,
  exercise,
  corrections,
  comparisons,
  notedBefore,
  fixedTimes,
  weekParts,
  lowsLined,
  insulinNoted,
  pregnancy,
  remarks,
  lastTime,
  visitByVisit,
};

/**
 * Measures a timeline against a target set; `words` are those of logbooks. A measure sees at least one reading.
 * Never throws: one that does is reported as failed.
 */
export function measure(timeline: Timeline, targets: TargetSet, words?: LogWords, asked?: Asked): Measures {
  const shared = context(timeline, targets, words, asked);
  return Object.fromEntries(
    Object.values(measures).map((each) => [each.id, guarded(each, shared)]),
  ) as unknown as Measures;
}

function guarded<Id extends keyof Measures>(each: Measure<Id>, shared: Context) {
  if (shared.timeline.readings.count === 0) return { ok: false, why: 'no-readings' };
  try {
    return each.compute(shared);
  } catch {
    return { ok: false, why: 'failed' };
  }
}

import type { MealCourse } from '../model/occasions.ts';
import { incrementalArea } from '../stats/area.ts';
import { HIGH } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import { glucoseAt, type Signal, stretch } from './signal.ts';

/** The time in which a meal is looked at, and the longer one for its way back (clinical practice; figures ours). */
export const WINDOW = 180;
const LONG_WINDOW = 240;
const BEFORE = 15;
/** Back means within so many mg/dL of the baseline (ours). */
const BACK = 10;

/** Glucose after a meal note; null when too little was seen, or nothing before it. */
export function mealCourse(signal: Signal, at: number): MealCourse | null {
  const { heights, bands } = signal;
  const { readings } = signal.timeline;
  const before = stretch(signal, at - BEFORE * MINUTE_MS, at + 1);
  const after = stretch(signal, at, at + WINDOW * MINUTE_MS);
  if (before.first === before.end || after.seen < SEEN_SHARE) return null;
  let sum = 0;
  for (let i = before.first; i < before.end; i++) sum += heights[i]!;
  const baseline = mgPerDl(sum / (before.end - before.first));
  const long = stretch(signal, at, at + LONG_WINDOW * MINUTE_MS);
  const peak = after.highest;
  const n = after.end - after.first;
  const minutes = new Float64Array(n);
  let high = 0;
  for (let k = 0, i = after.first; k < n; k++, i++) {
    minutes[k] = (readings.at[i]! - at) / MINUTE_MS;
    if (bands[i]! >= HIGH) high += readings.weight[i]!;
  }
  let highLater = 0;
  for (let i = after.end; i < long.end; i++) if (bands[i]! >= HIGH) highLater += readings.weight[i]!;
  return {
    baseline,
    oneHour: glucoseAt(signal, at + 60 * MINUTE_MS),
    twoHours: glucoseAt(signal, at + 120 * MINUTE_MS),
    peak: mgPerDl(heights[peak]!),
    peakLimit: readings.limit[peak] !== 0,
    increment: heights[peak]! - baseline,
    minutesToPeak: (readings.at[peak]! - at) / MINUTE_MS,
    highMinutes: high,
    highMinutes4h: long.seen < SEEN_SHARE ? null : high + highLater,
    area: incrementalArea({ minutes, values: heights.subarray(after.first, after.end) }, baseline),
    returnMinutes: returnMinutes(signal, at, peak, long.end, baseline + BACK),
    low: long.low,
  };
}

/** Minutes after the note at which it is first back, among the readings up to `end`. */
function returnMinutes({ heights, timeline }: Signal, at: number, peak: number, end: number, level: number) {
  for (let i = peak + 1; i < end; i++) {
    if (heights[i]! <= level) return (timeline.readings.at[i]! - at) / MINUTE_MS;
  }
  return null;
}

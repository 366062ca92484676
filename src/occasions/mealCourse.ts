import type { MealCourse } from '../model/occasions.ts';
import { incrementalArea } from '../stats/area.ts';
import { HIGH } from '../targets/bands.ts';
import { mgPerDl } from '../units.ts';
import { glucoseAt, MINUTE, readingFrom, SEEN_SHARE, type Signal, stretch } from './signal.ts';

/** The time in which a meal is looked at, and the longer one for its way back (clinical practice; figures ours). */
export const WINDOW = 180;
export const LONG_WINDOW = 240;
const BEFORE = 15;
/** Back means within so many mg/dL of the baseline (ours). */
const BACK = 10;

/** Glucose after a meal note; null when too little was seen, or nothing before it. */
export function mealCourse(signal: Signal, at: number): MealCourse | null {
  const { heights } = signal;
  const { readings } = signal.timeline;
  const before = stretch(signal, at - BEFORE * MINUTE, at + 1);
  const after = stretch(signal, at, at + WINDOW * MINUTE);
  if (before.first === before.end || after.seen < SEEN_SHARE) return null;
  let sum = 0;
  for (let i = before.first; i < before.end; i++) sum += heights[i]!;
  const baseline = mgPerDl(sum / (before.end - before.first));
  const long = stretch(signal, at, at + LONG_WINDOW * MINUTE);
  const peak = after.highest;
  const minutes: number[] = [];
  const values: number[] = [];
  for (let i = after.first; i < after.end; i++) {
    minutes.push((readings.at[i]! - at) / MINUTE);
    values.push(heights[i]!);
  }
  return {
    baseline,
    oneHour: glucoseAt(signal, at + 60 * MINUTE),
    twoHours: glucoseAt(signal, at + 120 * MINUTE),
    peak: mgPerDl(heights[peak]!),
    peakLimit: readings.limit[peak] !== 0,
    increment: heights[peak]! - baseline,
    minutesToPeak: (readings.at[peak]! - at) / MINUTE,
    highMinutes: highMinutes(signal, after),
    highMinutes4h: long.seen < SEEN_SHARE ? null : highMinutes(signal, long),
    area: incrementalArea({ minutes, values }, baseline),
    returnMinutes: returnMinutes(signal, at, peak, baseline + BACK),
    low: long.low,
  };
}

function highMinutes({ bands, timeline }: Signal, { first, end }: { first: number; end: number }): number {
  let minutes = 0;
  for (let i = first; i < end; i++) if (bands[i]! >= HIGH) minutes += timeline.readings.weight[i]!;
  return minutes;
}

function returnMinutes(signal: Signal, at: number, peak: number, level: number): number | null {
  const end = readingFrom(signal, at + LONG_WINDOW * MINUTE);
  for (let i = peak + 1; i < end; i++) {
    if (signal.heights[i]! <= level) return (signal.timeline.readings.at[i]! - at) / MINUTE;
  }
  return null;
}

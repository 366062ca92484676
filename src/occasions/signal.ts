import type { MgPerDl } from '../model/glucose.ts';
import type { Timeline } from '../model/timeline.ts';
import { firstFrom } from '../stats/sorted.ts';
import { LOW } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';

/** A value "at" a time is the nearest reading within so many minutes. */
const NEAREST = 10;

/** Readings already classified, as the measures share them. */
export interface Signal {
  timeline: Timeline;
  /** Index into BANDS of each reading. */
  bands: Uint8Array;
  /** mg/dL, with a stand-in where the sensor's bound is unknown. */
  heights: Float64Array;
  lows(): readonly { start: number; end: number; level2: boolean }[];
  highs(): readonly { start: number; end: number; outerMinutes: number }[];
}

/** Index of the first reading at or after an instant. */
export function readingFrom({ timeline }: Signal, at: number): number {
  return firstFrom(timeline.readings.at, timeline.readings.count, at);
}

/** Glucose at an instant; null without a reading near it. */
export function glucoseAt(signal: Signal, at: number): MgPerDl | null {
  const { at: times, count } = signal.timeline.readings;
  const next = readingFrom(signal, at);
  const best = next > 0 && (next >= count || at - times[next - 1]! < times[next]! - at) ? next - 1 : next;
  if (best >= count || Math.abs(times[best]! - at) > NEAREST * MINUTE_MS) return null;
  return mgPerDl(signal.heights[best]!);
}

/** What a stretch of time holds; indices are of readings, -1 for none. */
export interface Stretch {
  /** Half-open range of readings. */
  first: number;
  end: number;
  /** Share of its minutes with readings, at most 1. */
  seen: number;
  lowest: number;
  highest: number;
  /** Any reading below the low limit; null when none was and too little was seen to say so. */
  low: boolean | null;
}

/** Readings from `from` up to but not including `to`. */
export function stretch(signal: Signal, from: number, to: number): Stretch {
  const { bands, heights } = signal;
  const { at, weight, count } = signal.timeline.readings;
  const first = readingFrom(signal, from);
  let end = first;
  let minutes = 0;
  let lowest = -1;
  let highest = -1;
  let low = false;
  for (; end < count && at[end]! < to; end++) {
    minutes += weight[end]!;
    if (lowest < 0 || heights[end]! < heights[lowest]!) lowest = end;
    if (highest < 0 || heights[end]! > heights[highest]!) highest = end;
    if (bands[end]! <= LOW) low = true;
  }
  const seen = to > from ? Math.min(1, (minutes * MINUTE_MS) / (to - from)) : 0;
  return { first, end, seen, lowest, highest, low: low ? true : seen >= SEEN_SHARE ? false : null };
}

/** Those of a list in order of time that lie from `from` to `to`, both included. */
export function between<T extends { at: number }>(list: readonly T[], from: number, to: number): T[] {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (list[middle]!.at < from) low = middle + 1;
    else high = middle;
  }
  const found: T[] = [];
  for (let i = low; i < list.length && list[i]!.at <= to; i++) found.push(list[i]!);
  return found;
}

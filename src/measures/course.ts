import { HIGH, LOW, VERY_HIGH, VERY_LOW } from '../targets/bands.ts';
import type { Context } from './context.ts';

/** At least this long beyond the limit to begin, and back inside to end (Danne 2017; end rule from memory). */
export const EPISODE_MINUTES = 15;

/** A low or a high as runs of readings; indices into the readings. */
export interface Course {
  /** First reading beyond the limit, and last reading that belongs to it. */
  first: number;
  last: number;
  /** Milliseconds. Ends at the first reading back inside, or where the last reading before a gap ends. */
  start: number;
  end: number;
  /** Minutes of its readings beyond the outer limit, and the longest unbroken stretch of them. */
  outerMinutes: number;
  longestOuter: number;
  cutStart: boolean;
  cutEnd: boolean;
}

export function findLows(shared: Context): Course[] {
  return find(shared, (band) => band <= LOW, VERY_LOW);
}

export function findHighs(shared: Context): Course[] {
  return find(shared, (band) => band >= HIGH, VERY_HIGH);
}

/**
 * The episode rule: a run of readings beyond the limit that together stand for 15 minutes opens an episode, a run
 * back inside of 15 minutes ends it where that run began; shorter recoveries count in. A pause longer than the gap
 * rule closes it at the last reading before and marks it cut: nothing is made up between readings.
 */
function find(shared: Context, beyond: (band: number) => boolean, outer: number): Course[] {
  const { bands, timeline } = shared;
  const { at, weight, count } = timeline.readings;
  const longest = timeline.gapMinutes * 60000;
  const found: Course[] = [];
  let open: Course | null = null;
  let runStart = 0;
  let runMinutes = 0;
  let runBeyond = false;
  let segmentStart = 0;

  const close = (last: number, end: number, cut: boolean) => {
    found.push({ ...open!, last, end, cutEnd: cut });
    open = null;
  };

  for (let i = 0; i < count; i++) {
    const isBeyond = beyond(bands[i]!);
    const afterGap = i > 0 && at[i]! - at[i - 1]! > longest;
    if (afterGap) {
      if (open) close(i - 1, at[i - 1]! + weight[i - 1]! * 60000, true);
      segmentStart = i;
    }
    if (afterGap || i === 0 || isBeyond !== runBeyond) {
      runStart = i;
      runMinutes = 0;
      runBeyond = isBeyond;
    }
    runMinutes += weight[i]!;
    if (runMinutes < EPISODE_MINUTES) continue;
    if (runBeyond && !open) {
      open = blank(runStart, at[runStart]!, runStart === segmentStart);
    } else if (!runBeyond && open) {
      close(runStart - 1, at[runStart]!, false);
    }
  }
  if (open) close(count - 1, at[count - 1]! + weight[count - 1]! * 60000, true);
  for (const course of found) weighOuter(course, bands, weight, outer);
  return found;
}

function blank(first: number, start: number, cutStart: boolean): Course {
  return { first, last: first, start, end: start, outerMinutes: 0, longestOuter: 0, cutStart, cutEnd: false };
}

function weighOuter(course: Course, bands: Uint8Array, weight: Float64Array, outer: number): void {
  let stretch = 0;
  for (let i = course.first; i <= course.last; i++) {
    stretch = bands[i] === outer ? stretch + weight[i]! : 0;
    if (bands[i] === outer) course.outerMinutes += weight[i]!;
    if (stretch > course.longestOuter) course.longestOuter = stretch;
  }
}

import { HIGH, LOW, VERY_HIGH, VERY_LOW } from '../targets/bands.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Context } from './context.ts';

/** At least this long beyond the limit to begin, and back inside to end (Danne 2017; end rule from memory). */
export const EPISODE_MINUTES = 15;

/** A sensor's five minutes are seldom five minutes to the second: three readings still stand for fifteen. */
const SLACK = 0.5;

/** Long enough to begin, to end, or to reach level 2. */
export function lastsLong(minutes: number): boolean {
  return minutes >= EPISODE_MINUTES - SLACK;
}

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
  /** At least 15 minutes on end lay beyond the outer limit. */
  level2: boolean;
  cutStart: boolean;
  cutEnd: boolean;
}

export function findLows(shared: Context): Course[] {
  return find(shared, 0, LOW, VERY_LOW);
}

export function findHighs(shared: Context): Course[] {
  return find(shared, HIGH, VERY_HIGH, VERY_HIGH);
}

/**
 * The episode rule: a run of readings beyond the limit (bands `from` to `to`) that together stand for 15 minutes
 * opens an episode, a run back inside of 15 minutes ends it where that run began; shorter recoveries count in. A
 * pause longer than the gap rule closes it at the last reading before and marks it cut: nothing is made up between
 * readings.
 */
function find({ bands, timeline }: Context, from: number, to: number, outer: number): Course[] {
  const { at, weight, count } = timeline.readings;
  const longest = timeline.gapMinutes * MINUTE_MS;
  const found: Course[] = [];
  let open: Course | null = null;
  let segment = 0;
  let run = 0;
  let runMinutes = 0;
  let runBeyond = false;
  for (let i = 0; i < count; i++) {
    const beyond = bands[i]! >= from && bands[i]! <= to;
    const afterGap = i > 0 && at[i]! - at[i - 1]! > longest;
    if (afterGap) {
      if (open) found.push(cutAfter(open, i - 1, at, weight));
      open = null;
      segment = i;
    }
    if (afterGap || beyond !== runBeyond) {
      run = i;
      runMinutes = 0;
      runBeyond = beyond;
    }
    runMinutes += weight[i]!;
    if (!lastsLong(runMinutes) || beyond === (open !== null)) continue;
    if (open) {
      found.push({ ...open, last: run - 1, end: at[run]! });
      open = null;
    } else {
      open = begin(run, at[run]!, run === segment);
    }
  }
  if (open) found.push(cutAfter(open, count - 1, at, weight));
  for (const course of found) weighOuter(course, bands, weight, outer);
  return found;
}

function begin(first: number, start: number, cutStart: boolean): Course {
  return {
    first,
    last: first,
    start,
    end: start,
    outerMinutes: 0,
    longestOuter: 0,
    level2: false,
    cutStart,
    cutEnd: false,
  };
}

function cutAfter(open: Course, last: number, at: Float64Array, weight: Float64Array): Course {
  return { ...open, last, end: at[last]! + weight[last]! * MINUTE_MS, cutEnd: true };
}

function weighOuter(course: Course, bands: Uint8Array, weight: Float64Array, outer: number): void {
  let stretch = 0;
  for (let i = course.first; i <= course.last; i++) {
    stretch = bands[i] === outer ? stretch + weight[i]! : 0;
    if (bands[i] === outer) course.outerMinutes += weight[i]!;
    if (stretch > course.longestOuter) course.longestOuter = stretch;
  }
  course.level2 = lastsLong(course.longestOuter);
}

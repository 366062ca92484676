import type { Timeline } from '../model/timeline.ts';

/** Readings sorted by height within each bin of the clock, all days together. */
export interface ClockBins {
  width: number;
  /** Bin b holds the entries from starts[b] up to but not including starts[b + 1]. */
  starts: Int32Array;
  /** mg/dL, ascending within a bin. */
  heights: Float64Array;
  /** Day of each entry. */
  day: Uint16Array;
  /** How many days have readings in each bin, and how many in any. */
  days: Uint16Array;
  allDays: number;
}

/** Wide enough that a fortnight gives a bin about 28 values or more. */
function binWidth(interval: number): number {
  if (interval <= 5) return 15;
  return interval <= 15 ? 30 : 60;
}

/** All readings are put in order once and then dealt out, which is cheaper than sorting bin by bin. */
export function clockBins({ readings, interval }: Timeline, heights: Float64Array): ClockBins {
  const { count, minute, day } = readings;
  const width = binWidth(interval);
  const bins = 1440 / width;
  const binOf = new Uint8Array(1440);
  for (let at = 0; at < 1440; at++) binOf[at] = at / width;
  const starts = new Int32Array(bins + 1);
  const days = new Uint16Array(bins);
  const lastDay = new Int32Array(bins).fill(-1);
  let allDays = 0;
  for (let i = 0; i < count; i++) {
    const b = binOf[minute[i]!]!;
    starts[b + 1] = starts[b + 1]! + 1;
    if (lastDay[b] === day[i]) continue;
    days[b] = days[b]! + 1;
    lastDay[b] = day[i]!;
    if (i === 0 || day[i] !== day[i - 1]) allDays++;
  }
  for (let b = 0; b < bins; b++) starts[b + 1] = starts[b + 1]! + starts[b]!;
  const next = starts.slice(0, bins);
  const sorted = new Float64Array(count);
  const sortedDay = new Uint16Array(count);
  const order = roughOrder(heights, count);
  for (let k = 0; k < count; k++) {
    const i = order[k]!;
    const b = binOf[minute[i]!]!;
    const value = heights[i]!;
    let at = next[b]!;
    next[b] = at + 1;
    // Heights that share a step of the rough order are still to be put in order.
    for (; at > starts[b]! && sorted[at - 1]! > value; at--) {
      sorted[at] = sorted[at - 1]!;
      sortedDay[at] = sortedDay[at - 1]!;
    }
    sorted[at] = value;
    sortedDay[at] = day[i]!;
  }
  return { width, starts, heights: sorted, day: sortedDay, days, allDays };
}

/** Steps of a quarter of a mg/dL: finer than sensors report in either unit. What lies above shares the last step. */
const STEPS = 4096;

/** Indices of readings by step of height, in order of time within a step. */
function roughOrder(heights: Float64Array, count: number): Uint32Array {
  const steps = new Uint16Array(count);
  const next = new Int32Array(STEPS + 1);
  for (let i = 0; i < count; i++) {
    const step = Math.min(STEPS - 1, (heights[i]! * 4) | 0);
    steps[i] = step;
    next[step + 1] = next[step + 1]! + 1;
  }
  for (let step = 0; step < STEPS; step++) next[step + 1] = next[step + 1]! + next[step]!;
  const order = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    const step = steps[i]!;
    order[next[step]!] = i;
    next[step] = next[step]! + 1;
  }
  return order;
}

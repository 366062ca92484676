import { MINUTE_MS } from '../time/calendar.ts';

/** Steps longer than this are pauses, whatever the interval. */
const LONGEST_STEP = 120;

/** From this share of steps on, an interval is clear. */
export const CLEAR_SHARE = 0.6;

/** Minutes, share of steps that keep them, and whether seen from one reading to the next (1) or to the second next (2). */
export interface UsualStep {
  interval: number;
  share: number;
  lag: 1 | 2;
}

/**
 * The usual step of the readings `[from, to)`, to half a minute, and the share of steps that keep it: the most frequent
 * one. Where readings stand between those of a grid (two sensors, extra rows) no single step is usual but every second
 * reading keeps the grid's, so that is tried too. Undefined when no two readings are within two hours of each other.
 */
export function usualStep(at: Float64Array, from: number, to: number): UsualStep | undefined {
  const plain = modeOfSteps(at, from, to, 1);
  if (!plain || plain.share >= CLEAR_SHARE) return plain;
  const second = modeOfSteps(at, from, to, 2);
  return second && second.share > 1.5 * plain.share ? second : plain;
}

function modeOfSteps(at: Float64Array, from: number, to: number, lag: 1 | 2): UsualStep | undefined {
  const tally = new Uint32Array(2 * LONGEST_STEP + 1);
  let steps = 0;
  for (let i = from + lag; i < to; i++) {
    const halves = Math.round((at[i]! - at[i - lag]!) / (MINUTE_MS / 2));
    if (halves > 2 * LONGEST_STEP) continue;
    steps++;
    if (halves > 0) tally[halves]!++;
  }
  let mode = 0;
  for (let halves = 1; halves < tally.length; halves++) if (tally[halves]! > tally[mode]!) mode = halves;
  if (mode === 0) return undefined;
  const slack = 2 * slackOf(mode / 2);
  let near = 0;
  let sum = 0;
  for (let halves = Math.ceil(mode - slack); halves <= mode + slack; halves++) {
    near += tally[halves] ?? 0;
    sum += halves * (tally[halves] ?? 0);
  }
  // Jitter spreads the steps over neighbouring halves: then their mean, not the tallest, is the interval.
  const halves = 2 * tally[mode]! > near ? mode : Math.round(sum / near);
  return { interval: halves / 2, share: near / steps, lag };
}

/** Minutes a step may be from the interval and still be that interval: a quarter of it, or a cut-off minute. */
export function slackOf(interval: number): number {
  return Math.max(0.25 * interval, Math.min(1, 0.4 * interval));
}

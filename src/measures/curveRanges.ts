import type { CurveRange } from '../model/trust.ts';
import { chance } from '../stats/chance.ts';
import { studentQuantile } from '../stats/distributions.ts';
import { expandedTail } from '../stats/resample.ts';
import type { Context } from './context.ts';
import { fullDays, INTERVAL_DAYS, LEVEL, SEED, WHOLE_DAYS } from './estimate.ts';
import type { Measure } from './measure.ts';
import { binWidth } from './modalDay.ts';

const DRAWS = 300;
/** Minutes between the clock times shown. */
const STEP = 180;
const MIN_READINGS = 10;

/** How sure the curves of the usual day are, at eight clock times: whole days drawn again, expanded for few days. */
export const curveRanges: Measure<'curveRanges'> = {
  id: 'curveRanges',
  source: 'Daybands; Hyndman & Fan 1996, Am Stat 50:361-365 (type 1 within a draw)',
  needs: { days: INTERVAL_DAYS },
  definition: { level: LEVEL, method: WHOLE_DAYS, draws: DRAWS, step: STEP, readings: MIN_READINGS },
  compute(shared) {
    const { readings, interval, days } = shared.timeline;
    if (readings.count === 0) return { ok: false, why: 'no-readings' };
    const full = fullDays(shared);
    if (full < INTERVAL_DAYS) return { ok: false, why: 'too-few-days' };
    const width = binWidth(interval);
    const drawn = drawCounts(days.length);
    const tail = expandedTail(full, studentQuantile((1 + LEVEL) / 2, full - 1));
    const value: CurveRange[] = [];
    for (let minute = 0; minute < 1440; minute += STEP) {
      const range = rangeAt(shared, minute, width, drawn, tail);
      if (range) value.push(range);
    }
    if (value.length === 0) return { ok: false, why: 'too-few-readings' };
    return { ok: true, value, n: full, of: 'days' };
  },
};

let last: { days: number; counts: Uint8Array } | null = null;

/** How often each draw took each day; the last result is kept, because nearly all ask for the same fortnight. */
function drawCounts(days: number): Uint8Array {
  if (last?.days === days) return last.counts;
  const next = chance(SEED);
  const counts = new Uint8Array(days * DRAWS);
  for (let draw = 0; draw < DRAWS; draw++) {
    for (let day = 0; day < days; day++) {
      const cell = draw * days + Math.floor(next() * days);
      counts[cell] = counts[cell]! + 1;
    }
  }
  last = { days, counts };
  return counts;
}

const WANTED = [0.25, 0.5, 0.75] as const;

function rangeAt(
  { timeline, heights }: Context,
  minute: number,
  width: number,
  drawn: Uint8Array,
  tail: number,
): CurveRange | null {
  const found: number[] = [];
  const { minute: minutes } = timeline.readings;
  for (const { from, to } of timeline.days) {
    for (let i = lowerBound(minutes, from, to, minute); i < to && minutes[i]! < minute + width; i++) found.push(i);
  }
  if (found.length < MIN_READINGS) return null;
  found.sort((a, b) => heights[a]! - heights[b]!);
  const size = timeline.days.length;
  const sorted = Float64Array.from(found, (i) => heights[i]!);
  const ofDay = Uint16Array.from(found, (i) => timeline.readings.day[i]!);
  const perDay = new Uint16Array(size);
  for (const day of ofDay) perDay[day] = perDay[day]! + 1;
  const values = WANTED.map(() => new Float64Array(DRAWS));
  for (let draw = 0; draw < DRAWS; draw++) {
    const from = draw * size;
    let total = 0;
    for (let day = 0; day < size; day++) total += drawn[from + day]! * perDay[day]!;
    let passed = 0;
    let next = 0;
    for (let k = 0; k < ofDay.length && next < WANTED.length; k++) {
      passed += drawn[from + ofDay[k]!]!;
      while (next < WANTED.length && passed >= WANTED[next]! * total) values[next++]![draw] = sorted[k]!;
    }
  }
  const [p25, p50, p75] = values.map((column, which) => {
    column.sort();
    const at = (p: number) => column[Math.round(p * (DRAWS - 1))]!;
    const value = sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(WANTED[which]! * sorted.length) - 1))]!;
    return { value, low: Math.min(value, at(tail)), high: Math.max(value, at(1 - tail)) };
  }) as [CurveRange['p25'], CurveRange['p50'], CurveRange['p75']];
  return { minute, p25, p50, p75 };
}

/** First reading of a day at or after a minute. On a day whose clock goes back minutes come twice; the first will do. */
function lowerBound(minutes: Uint16Array, from: number, to: number, wanted: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (minutes[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

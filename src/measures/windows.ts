import type { LocalDate } from '../model/glucose.ts';
import type { DayWindow } from '../model/measures.ts';
import { HIGH, LOW } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';

const WIDTH = 240;
const STEP = 120;
const MIN_DAYS = 7;
const GOOD_SHARE = 0.7;
const PARTS = 1440 / STEP;

/**
 * Four-hour windows of the day on a two-hour grid. A day counts in a window when 70 % of it was seen, and as good
 * when 70 % of that was in range with no reading low. Best: most good days of those seen; hardest: least in range.
 */
export const windows: Measure<'windows'> = {
  id: 'windows',
  source: 'Daybands',
  needs: { days: MIN_DAYS },
  definition: { width: WIDTH, step: STEP, seenShare: SEEN_SHARE, goodShare: GOOD_SHARE, minDays: MIN_DAYS },
  compute(shared) {
    const grid = bandGrid(shared);
    const all: DayWindow[] = [];
    for (let part = 0; part * STEP + WIDTH <= 1440; part++) all.push(oneWindow(shared, grid, part));
    const seen = all.filter((window) => window.days >= MIN_DAYS);
    if (seen.length === 0) return { ok: false, why: 'too-few-days' };
    const best = seen.reduce((a, b) => (goodness(b) > goodness(a) ? b : a));
    const hardest = seen.reduce((a, b) => (hardness(b) > hardness(a) ? b : a));
    return { ok: true, value: { best, hardest, all }, n: best.days, of: 'days' };
  },
};

/** Good days first, time in range between equals. */
function goodness(window: DayWindow): number {
  return window.goodDays.length / window.days + window.inRange / 1000;
}

/** Least in range first, more time low between equals. */
function hardness(window: DayWindow): number {
  return 1 - window.inRange + window.low / 1000;
}

/** Minutes by day, part of the day and band. */
function bandGrid({ timeline, bands }: Context): Float64Array {
  const { count, minute, day, weight } = timeline.readings;
  const { days } = timeline;
  const grid = new Float64Array(days.length * PARTS * 5);
  for (let i = 0; i < count; i++) {
    const part = (minute[i]! / STEP) | 0;
    const cell = (day[i]! * PARTS + part) * 5 + bands[i]!;
    grid[cell] = grid[cell]! + weight[i]!;
  }
  return grid;
}

function oneWindow({ timeline }: Context, grid: Float64Array, part: number): DayWindow {
  const total = { low: 0, inRange: 0, high: 0 };
  const goodDays: LocalDate[] = [];
  let days = 0;
  timeline.days.forEach((day, d) => {
    const here = { low: 0, inRange: 0, high: 0 };
    for (let p = part; p < part + WIDTH / STEP; p++) {
      const at = (d * PARTS + p) * 5;
      for (let band = 0; band < 5; band++) {
        const minutes = grid[at + band]!;
        if (band <= LOW) here.low += minutes;
        else if (band >= HIGH) here.high += minutes;
        else here.inRange += minutes;
      }
    }
    total.low += here.low;
    total.inRange += here.inRange;
    total.high += here.high;
    const seen = here.low + here.inRange + here.high;
    if (seen < SEEN_SHARE * WIDTH) return;
    days++;
    if (here.low === 0 && here.inRange >= GOOD_SHARE * seen) goodDays.push(day.date);
  });
  const minutes = total.low + total.inRange + total.high;
  const share = (part: number) => (minutes > 0 ? part / minutes : 0);
  return {
    fromMinute: part * STEP,
    toMinute: part * STEP + WIDTH,
    inRange: share(total.inRange),
    low: share(total.low),
    high: share(total.high),
    days,
    goodDays,
  };
}

import type { CurveRange } from '../model/trust.ts';
import { alikeDays, LIKENESS } from '../stats/alike.ts';
import { chance } from '../stats/chance.ts';
import { studentQuantile } from '../stats/distributions.ts';
import { expandedTail } from '../stats/resample.ts';
import type { ClockBins } from './clockBins.ts';
import { fullDays, INTERVAL_DAYS, LEVEL, SEED, WHOLE_DAYS } from './estimate.ts';
import type { Measure } from './measure.ts';

const DRAWS = 300;
/** Minutes between the clock times shown. */
const STEP = 180;
const MIN_READINGS = 10;

/** How sure the curves of the usual day are, at eight clock times: whole days drawn again, expanded for few days and days alike. */
export const curveRanges: Measure<'curveRanges'> = {
  id: 'curveRanges',
  source: 'Daybands; Hyndman & Fan 1996, Am Stat 50:361-365 ({type-1-in-a-draw})',
  needs: { days: INTERVAL_DAYS },
  definition: { level: LEVEL, method: WHOLE_DAYS, draws: DRAWS, step: STEP, readings: MIN_READINGS },
  compute(shared) {
    const { days } = shared.timeline;
    const full = fullDays(shared);
    if (full < INTERVAL_DAYS) return { ok: false, why: 'too-few-days' };
    const bins = shared.clockBins();
    const t = studentQuantile((1 + LEVEL) / 2, full - 1);
    const tail = expandedTail(full, t * Math.sqrt(alikeDays(full, LIKENESS).times));
    const value: CurveRange[] = [];
    for (let minute = 0; minute < 1440; minute += STEP) {
      const range = rangeAt(days.length, bins, minute / bins.width, tail);
      if (range) value.push(range);
    }
    if (value.length === 0) return { ok: false, why: 'too-few-readings' };
    return { ok: true, value, n: full, of: 'days' };
  },
};

/** How often each draw took each day, several draws side by side in one whole number, so that all are added up at once. */
interface Packed {
  days: number;
  bits: number;
  counts: Int32Array;
}

let last: Packed | null = null;

/** The last result is kept, because nearly all ask for the same fortnight. */
function drawCounts(days: number, bits: number): Packed {
  if (last?.days === days && last.bits === bits) return last;
  const next = chance(SEED);
  const lanes = 32 / bits;
  const counts = new Int32Array(days * Math.ceil(DRAWS / lanes));
  for (let draw = 0; draw < DRAWS; draw++) {
    const one = 1 << (bits * (draw % lanes));
    for (let day = 0; day < days; day++) {
      const cell = Math.floor(draw / lanes) * days + Math.floor(next() * days);
      counts[cell] = (counts[cell]! + one) | 0;
    }
  }
  last = { days, bits, counts };
  return last;
}

const WANTED = [0.25, 0.5, 0.75] as const;

/**
 * A draw's percentile is the first reading, in ascending order, with so many of the drawn readings up to it. Where it
 * lies is counted by place in that order, so nothing is sorted.
 */
function rangeAt(size: number, bins: ClockBins, bin: number, tail: number): CurveRange | null {
  const { width, starts } = bins;
  const first = starts[bin]!;
  const n = starts[bin + 1]! - first;
  if (n < MIN_READINGS) return null;
  const heights = bins.heights.subarray(first, first + n);
  const ofDay = bins.day.subarray(first, first + n);
  const places = placesDrawn(size, ofDay);
  const [p25, p50, p75] = places.map((counts, which) => {
    const value = heights[Math.min(n - 1, Math.max(0, Math.ceil(WANTED[which]! * n) - 1))]!;
    const at = (p: number) => heights[placeOf(counts, p)]!;
    return { value, low: Math.min(value, at(tail)), high: Math.max(value, at(1 - tail)) };
  }) as [CurveRange['p25'], CurveRange['p50'], CurveRange['p75']];
  return { minute: bin * width, p25, p50, p75 };
}

/** For each percentile how many draws have it at each place. Draws that took no day with readings here count nowhere. */
function placesDrawn(size: number, ofDay: Uint16Array): Uint16Array[] {
  const n = ofDay.length;
  const perDay = new Uint16Array(size);
  for (let k = 0; k < n; k++) perDay[ofDay[k]!] = perDay[ofDay[k]!]! + 1;
  const most = size * perDay.reduce((a, b) => Math.max(a, b), 0);
  const { bits, counts } = drawCounts(size, most < 256 ? 8 : most < 65_536 ? 16 : 32);
  const mask = 0xffffffff >>> (32 - bits);
  const places = WANTED.map(() => new Uint16Array(n));
  const passed = new Int32Array(n);
  for (let draw = 0, from = 0; draw < DRAWS; from += size) {
    let all = 0;
    for (let k = 0; k < n; k++) {
      all = (all + counts[from + ofDay[k]!]!) | 0;
      passed[k] = all;
    }
    for (let lane = 0; lane < 32 && draw < DRAWS; lane += bits, draw++) {
      const total = (all >>> lane) & mask;
      if (total === 0) continue;
      for (let which = 0; which < WANTED.length; which++) {
        const wanted = Math.ceil(WANTED[which]! * total);
        // Bisection without a branch: which way it goes is a coin toss, and a processor that guesses it loses time.
        let low = 0;
        for (let length = n; length > 1; ) {
          const half = length >> 1;
          const short = (((passed[low + half - 1]! >>> lane) & mask) - wanted) >> 31;
          low += short & half;
          length -= half;
        }
        const found = places[which]!;
        found[low] = found[low]! + 1;
      }
    }
  }
  return places;
}

/** The place below which the share `p` of all counted draws lies. */
function placeOf(counts: Uint16Array, p: number): number {
  const all = counts.reduce((sum, each) => sum + each, 0);
  let left = Math.round(p * (all - 1));
  let place = 0;
  while (left >= counts[place]!) left -= counts[place++]!;
  return place;
}

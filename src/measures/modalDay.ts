import type { ModalBin } from '../model/measures.ts';
import { QUANTILE_METHOD, quantile } from '../stats/quantile.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';
import { smoothed } from './smoothing.ts';

const MIN_READINGS = 5;
const MIN_DAYS = 5;
/** Below this many values a 5th or 95th percentile only interpolates between the two outermost. */
const MIN_FOR_OUTER = 20;

/** All days laid on one clock, with percentiles by clock bin. Bin width and smoothing are ours: no source states any. Mazze from memory. */
export const modalDay: Measure<'modalDay'> = {
  id: 'modalDay',
  source: 'Mazze 1987, Diabetes Care 10:111; Hyndman & Fan 1996, Am Stat 50:361-365; Daybands',
  needs: { days: MIN_DAYS },
  definition: {
    quantiles: QUANTILE_METHOD,
    minReadings: MIN_READINGS,
    minDays: MIN_DAYS,
    minForOuter: MIN_FOR_OUTER,
    smoothing: '1-2-1',
  },
  compute(shared) {
    const { readings, interval } = shared.timeline;
    if (readings.count === 0) return { ok: false, why: 'no-readings' };
    const binMinutes = binWidth(interval);
    const { raw, days } = rawBins(shared, binMinutes);
    if (days < MIN_DAYS) return { ok: false, why: 'too-few-days' };
    return { ok: true, value: { binMinutes, raw, bins: smoothed(raw) }, n: days, of: 'days' };
  },
};

/** Wide enough that a fortnight gives a bin about 28 values or more. */
export function binWidth(interval: number): number {
  if (interval <= 5) return 15;
  return interval <= 15 ? 30 : 60;
}

function rawBins({ timeline, heights }: Context, binMinutes: number): { raw: ModalBin[]; days: number } {
  const { readings } = timeline;
  const bins = 1440 / binMinutes;
  const starts = new Int32Array(bins + 1);
  const bin = new Uint16Array(readings.count);
  for (let i = 0; i < readings.count; i++) {
    bin[i] = (readings.minute[i]! / binMinutes) | 0;
    starts[bin[i]! + 1] = starts[bin[i]! + 1]! + 1;
  }
  for (let b = 0; b < bins; b++) starts[b + 1] = starts[b + 1]! + starts[b]!;
  const values = new Float64Array(readings.count);
  const next = starts.slice(0, bins);
  const days = new Uint16Array(bins);
  const lastDay = new Int32Array(bins).fill(-1);
  let allDays = 0;
  for (let i = 0; i < readings.count; i++) {
    const b = bin[i]!;
    values[next[b]!] = heights[i]!;
    next[b] = next[b]! + 1;
    const day = readings.day[i]!;
    if (lastDay[b] !== day) days[b] = days[b]! + 1;
    lastDay[b] = day;
    if (i === 0 || day !== readings.day[i - 1]) allDays++;
  }
  const raw = Array.from({ length: bins }, (_, b) =>
    oneBin(b * binMinutes, values.subarray(starts[b]!, starts[b + 1]!), days[b]!),
  );
  return { raw, days: allDays };
}

function oneBin(minute: number, values: Float64Array, days: number): ModalBin {
  const n = values.length;
  if (n < MIN_READINGS || days < MIN_DAYS) {
    return { minute, p5: null, p25: null, p50: null, p75: null, p95: null, n, days };
  }
  values.sort();
  const outer = n >= MIN_FOR_OUTER;
  return {
    minute,
    p5: outer ? quantile(values, 0.05) : null,
    p25: quantile(values, 0.25),
    p50: quantile(values, 0.5),
    p75: quantile(values, 0.75),
    p95: outer ? quantile(values, 0.95) : null,
    n,
    days,
  };
}

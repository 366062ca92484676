import type { ModalBin } from '../model/measures.ts';
import { QUANTILE_METHOD, quantile } from '../stats/quantile.ts';
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
    const { width, starts, heights, days, allDays } = shared.clockBins();
    if (allDays < MIN_DAYS) return { ok: false, why: 'too-few-days' };
    const raw = Array.from(days, (held, b) => oneBin(b * width, heights.subarray(starts[b]!, starts[b + 1]!), held));
    return { ok: true, value: { binMinutes: width, raw, bins: smoothed(raw) }, n: allDays, of: 'days' };
  },
};

/** `values` in ascending order. */
function oneBin(minute: number, values: Float64Array, days: number): ModalBin {
  const n = values.length;
  if (n < MIN_READINGS || days < MIN_DAYS) {
    return { minute, p5: null, p25: null, p50: null, p75: null, p95: null, n, days };
  }
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

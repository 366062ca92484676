import { alikeDays } from './alike.ts';
import { square } from './elementary.ts';

/**
 * Days resemble their neighbours. Two fortnights tell a correlation of days so badly that an estimate of 0 is worth
 * little, so this much is always answered for (ours; tests/comparing shows what it gives). Above the upper bound a
 * fortnight holds too few independent days for any interval.
 */
const LEAST_CORRELATION = 0.3;
const MOST_CORRELATION = 0.6;
/** Part of the estimate's standard error that is added to it: too small an estimate calls chance a change (ours). */
const CAUTION = 0.5;

export interface DayError {
  variance: number;
  degrees: number;
}

export function errorOf(pull: Float64Array, a: number): DayError {
  const n = pull.length;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += square(pull[i]!);
  const { times, degrees } = alikeDays(n, a);
  return { variance: ((squares * n) / (n - 1)) * times, degrees };
}

/** Correlation of neighbouring days in all periods together, corrected for the few days behind it (Kendall 1954). */
export function neighbours(periods: { pull: Float64Array; place: Int32Array }[]): number {
  let products = 0;
  let pairs = 0;
  let squares = 0;
  let days = 0;
  for (const { pull, place } of periods) {
    let own = 0;
    for (let i = 0; i < pull.length; i++) own += square(pull[i]!);
    if (own === 0) continue;
    // Each period in its own spread, so that the wider one does not speak for both.
    const spread = own / pull.length;
    for (let i = 1; i < pull.length; i++) {
      if (place[i]! - place[i - 1]! !== 1) continue;
      products += (pull[i]! * pull[i - 1]!) / spread;
      pairs++;
    }
    squares += pull.length;
    days += pull.length;
  }
  if (pairs < 8) return LEAST_CORRELATION;
  const n = days / periods.length;
  const seen = products / pairs / (squares / days);
  const likely = (seen + 1 / n) / Math.max(0.3, 1 - 4 / n) + CAUTION / Math.sqrt(pairs);
  return Math.min(MOST_CORRELATION, Math.max(LEAST_CORRELATION, likely));
}

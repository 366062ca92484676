import type { Estimate } from '../model/measured.ts';
import type { Measures } from '../model/measures.ts';
import type { VisitNumber, VisitNumbers } from '../model/visits.ts';
import { pow } from '../stats/elementary.ts';
import type { Context } from './context.ts';
import { estimate, INTERVAL_DAYS, LEVEL } from './estimate.ts';
import { mean } from './mean.ts';
import { nightStates } from './nights.ts';
import { timeInBands } from './timeInBands.ts';

/** The five numbers of a visit, as its report prints them; `known` are those of its measures, where they stand already. */
export function visitNumbers(shared: Context, known?: Pick<Measures, 'timeInBands' | 'mean'>): VisitNumbers {
  const bands = known?.timeInBands ?? timeInBands.compute(shared);
  const average = known?.mean ?? mean.compute(shared);
  const share = bands.ok ? bands.value : null;
  return {
    inRangeShare: share && bare(share.exclusive['in-range']),
    lowShare: share && bare(share.cumulative.low),
    highShare: share && bare(share.cumulative.high),
    meanMgPerDl: average.ok ? bare(average.value.mgdl) : null,
    nightsLowShare: nightsLow(shared),
  };
}

const bare = ({ value, low, high }: Estimate): VisitNumber => ({ value, low, high });

/**
 * Of the nights that can be tellable, those with a low. Where none or all of them had one, the exact bound of as many nights
 * (Clopper & Pearson 1934).
 */
function nightsLow(shared: Context): VisitNumber | null {
  const states = nightStates(shared);
  const tellable = Float64Array.from(states, (state) => (state === 'unknown' ? 0 : 1));
  const low = Float64Array.from(states, (state) => (state === 'unknown' || state === 'none-seen' ? 0 : 1));
  const [n, k] = [tellable, low].map((column) => column.reduce((sum, one) => sum + one, 0)) as [number, number];
  if (n === 0) return null;
  if (n < INTERVAL_DAYS) return { value: k / n, low: null, high: null };
  const least = pow((1 - LEVEL) / 2, 1 / n);
  if (k === 0) return { value: 0, low: 0, high: 1 - least };
  if (k === n) return { value: 1, low: least, high: 1 };
  return bare(estimate(shared, low, tellable, 'share'));
}

import type { MgPerDl } from '../model/glucose.ts';
import type { ModalBin } from '../model/measures.ts';
import { beginningOf, daysOf } from './evidence/episodes.ts';
import { felt } from './evidence/felt.ts';
import { count, glucose, limit, often, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LEAST_DAYS = 2;
/** What adults aim at, where a set states no share: a usual day is called calm where both are met only (ours). */
const USUAL_AIM = 0.7;
const USUAL_VERY_HIGH = 0.05;

/**
 * Lows on 2 or more days that the summary does not show: the time low meets its goals, or the lower edge of the
 * middle half of days never comes down to the low limit.
 */
export const lowsAveragesHide: Finding<'lows-averages-hide'> = {
  id: 'lows-averages-hide',
  source: 'ours',
  look(measures, targets) {
    const { lows, coverage, timeInBands, modalDay } = measures;
    if (!lows.ok) return untold(lows.why);
    if (!coverage.ok) return untold(coverage.why);
    // One low over midnight is still one low.
    const where = lows.value.list.flatMap(beginningOf);
    if (daysOf(where).length < LEAST_DAYS) return absent;
    if (!timeInBands.ok && !modalDay.ok) return untold(modalDay.why);
    const goals = timeInBands.ok ? timeInBands.value.goals.filter(({ of }) => of === 'low' || of === 'very-low') : [];
    const goalMet = timeInBands.ok && timeInBands.value.judged && goals.length > 0 && goals.every(({ met }) => met);
    const edge = modalDay.ok ? least(modalDay.value.bins) : null;
    const clear = edge !== null && edge >= targets.limits['mg/dL'].low;
    if (!goalMet && !clear) return absent;
    const hidden = goalMet && clear ? 'both' : goalMet ? 'goal' : 'profile';
    const low = timeInBands.ok ? timeInBands.value.cumulative.low.value : 0;
    const aim = targets.goals.find(({ of }) => of === 'in-range')?.share ?? USUAL_AIM;
    const most = targets.goals.find(({ of }) => of === 'very-high')?.share ?? USUAL_VERY_HIGH;
    const shares = timeInBands.ok ? timeInBands.value.exclusive : null;
    const calm = shares !== null && shares['in-range'].value > aim && shares['very-high'].value < most;
    return holds(
      {
        calm: word(calm ? 'yes' : 'no'),
        hidden: word(hidden),
        often: often(daysOf(where).length, coverage.value.daysWithReadings, 'days'),
        count: count(lows.value.list.length),
        share: share(low, goals.find(({ of }) => of === 'low')?.share),
        edge: edge === null ? limit('low') : glucose(edge as MgPerDl),
        limit: limit('low'),
        ...felt(measures),
      },
      where,
      hidden,
    );
  },
};

function least(bins: readonly ModalBin[]): number | null {
  let lowest: number | null = null;
  for (const { p25 } of bins) if (p25 !== null && (lowest === null || p25 < lowest)) lowest = p25;
  return lowest;
}

import { felt } from './evidence/felt.ts';
import { limit, minutes, share, shareEstimate, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * Time low, or very low, is over its goal. The goal on low includes very low. Lows wait for no sufficiency: of too few
 * readings it is told as well, without the verdict.
 */
export const timeLowOverGoal: Finding<'time-low-over-goal'> = {
  id: 'time-low-over-goal',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603',
  look(measures) {
    const { timeInBands } = measures;
    if (!timeInBands.ok) return untold(timeInBands.why);
    const { goals, cumulative, exclusive, judged } = timeInBands.value;
    const low = goals.find(({ of }) => of === 'low');
    const veryLow = goals.find(({ of }) => of === 'very-low');
    if (!low && !veryLow) return untold('not-for-these-targets');
    const over = { low: low?.met === false, veryLow: veryLow?.met === false };
    if (!over.low && !over.veryLow) return absent;
    const which = over.low && over.veryLow ? 'both' : over.low ? 'low' : 'veryLow';
    return holds(
      {
        which: word(which),
        judged: word(judged ? 'yes' : 'no'),
        low: shareEstimate(cumulative.low, low?.share),
        lowDay: share(cumulative.low.value),
        lowMinutes: minutes(cumulative.low.value * 1440),
        lowGoal: share(low?.share ?? 0),
        limit: limit('low'),
        veryLow: shareEstimate(exclusive['very-low'], veryLow?.share),
        veryLowDay: share(exclusive['very-low'].value),
        veryLowMinutes: minutes(exclusive['very-low'].value * 1440),
        veryLowGoal: share(veryLow?.share ?? 0),
        veryLowLimit: limit('very-low'),
        ...felt(measures),
      },
      [],
      which,
    );
  },
};

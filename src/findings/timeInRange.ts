import { limit, share, shareEstimate, word } from './evidence/quantities.ts';
import { type Finding, holds, untold } from './finding.ts';

/** Time in range with its interval, against the set's goal when it has one, and the time above range. */
export const timeInRange: Finding<'time-in-range'> = {
  id: 'time-in-range',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603',
  look({ timeInBands, coverage }) {
    if (!timeInBands.ok) return untold(timeInBands.why);
    const { exclusive, cumulative, goals, judged } = timeInBands.value;
    const goal = goals.find(({ of }) => of === 'in-range');
    const highGoal = goals.find(({ of }) => of === 'high');
    const inRange = exclusive['in-range'];
    const verdict = goal === undefined ? 'none' : !judged ? 'open' : goal.met ? 'met' : 'missed';
    return holds(
      {
        verdict: word(verdict),
        steady: word(coverage.ok && coverage.value.enough ? 'yes' : 'no'),
        estimate: shareEstimate(inRange, goal?.share),
        best: share(inRange.value),
        low: share(inRange.low ?? inRange.value),
        high: share(inRange.high ?? inRange.value),
        known: word(inRange.low === null ? 'point' : 'interval'),
        goal: share(goal?.share ?? 0),
        from: limit('low'),
        to: limit('high'),
        above: share(cumulative.high.value, highGoal?.share),
        aboveGoal: share(highGoal?.share ?? 0),
        aboveVerdict: word(highGoal === undefined ? 'none' : highGoal.met ? 'met' : 'missed'),
      },
      [],
      verdict,
    );
  },
};

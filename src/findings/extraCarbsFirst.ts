import { NIGHT_END } from '../targets/consensus.ts';
import { also, counts, leftOut, ofKind, seenOn } from './evidence/hint.ts';
import { clock, glucose, limit } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/**
 * Sessions with extra food in the hour before beside those with none noted, by the lowest value from the start to 6 in the
 * morning: where a hint stands (3 days a side, 15 mg/dL apart, told apart from chance with all comparisons together).
 */
export const extraCarbsFirst: Finding<'extra-carbs-first'> = {
  id: 'extra-carbs-first',
  source: 'Colberg 2016, Diabetes Care 39:2065-2079 (context); comparison: ours',
  look({ comparisons }) {
    const found = ofKind(comparisons, 'extra-carbs');
    if ('why' in found) return untold(found.why);
    const one = found.list.find(({ verdict }) => verdict === 'hint');
    if (one?.a.median == null || one.b.median == null) return absent;
    return holds(
      {
        ...counts(one),
        ...leftOut(one),
        limit: limit('low'),
        six: clock(NIGHT_END),
        aLowest: glucose(one.a.median as never),
        bLowest: glucose(one.b.median as never),
      },
      [...seenOn(one.a), ...seenOn(one.b)].map(({ date }) => ({ date })),
      (one.difference?.value ?? 0) > 0 ? 'higher-with' : 'lower-with',
      also(one),
    );
  },
};

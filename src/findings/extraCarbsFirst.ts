import type { Comparison } from '../model/occasions.ts';
import { counts, ofKind, seenOn } from './evidence/hint.ts';
import { glucose, limit, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Sessions with extra food in the hour before beside those with none noted: the night after, or soon after. */
export const extraCarbsFirst: Finding<'extra-carbs-first'> = {
  id: 'extra-carbs-first',
  source: 'Colberg 2016, Diabetes Care 39:2065-2079 (context); comparison: ours',
  look({ comparisons }) {
    const night = ofKind(comparisons, 'extra-carbs-night');
    const soon = ofKind(comparisons, 'extra-carbs-soon');
    if ('why' in night && 'why' in soon) return untold(night.why);
    const hints = [night, soon].map((found) =>
      'why' in found ? undefined : found.list.find(({ verdict }) => verdict === 'hint'),
    );
    const one: Comparison | undefined = hints[0] ?? hints[1];
    if (one?.a.median == null || one.b.median == null) return absent;
    return holds(
      {
        ...counts(one),
        limit: limit('low'),
        when: word(one === hints[0] ? 'night' : 'soon'),
        aLowest: glucose(one.a.median as never),
        bLowest: glucose(one.b.median as never),
      },
      [...seenOn(one.a), ...seenOn(one.b)].map(({ date }) => ({ date })),
      (one.difference?.value ?? 0) > 0 ? 'higher-with' : 'lower-with',
    );
  },
};

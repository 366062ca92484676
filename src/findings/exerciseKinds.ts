import { also, counts, ofKind, seenOn } from './evidence/hint.ts';
import { rise, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** The two kinds of exercise noted most, by how far glucose fell from the start to two hours after the end. */
export const exerciseKinds: Finding<'exercise-kinds'> = {
  id: 'exercise-kinds',
  source: 'ours',
  look({ comparisons }) {
    const found = ofKind(comparisons, 'exercise-kind');
    if ('why' in found) return untold(found.why);
    const one = found.list.find(({ verdict }) => verdict === 'hint');
    if (one?.a.median == null || one.b.median == null) return absent;
    return holds(
      {
        ...counts(one),
        first: word(one.a.name),
        second: word(one.b.name),
        aFall: rise(Math.max(0, one.a.median)),
        bFall: rise(Math.max(0, one.b.median)),
      },
      [...seenOn(one.a), ...seenOn(one.b)].map(({ date }) => ({ date })),
      undefined,
      also(one),
    );
  },
};

import type { Look } from '../../model/look.ts';
import type { Measures } from '../../model/measures.ts';
import type { Comparison, ComparisonId } from '../../model/occasions.ts';
import { absent, holds, untold } from '../finding.ts';
import { counts, ofKind, partOfDay, seenOn, strongest } from './hint.ts';
import { count, limit, minutes, word } from './quantities.ts';

/** Minutes above range after meals of two kinds, when the guarded comparison lets it stand as a hint. */
export function mealHint({ comparisons }: Measures, id: ComparisonId, sign?: 1 | -1): Look {
  const found = ofKind(comparisons, id);
  if ('why' in found) return untold(found.why);
  const one = sign ? strongest(found.list, sign) : (strongest(found.list, 1) ?? strongest(found.list, -1));
  if (!one) return absent;
  const longer = (one.difference?.value ?? 0) > 0 ? 'first' : 'second';
  const parted = one.grams === null ? {} : { grams: count(one.grams) };
  return holds({ ...sides(one), ...counts(one), ...partOfDay(one), ...parted, longer: word(longer) }, seenOn(one.a));
}

const sides = ({ a, b }: Comparison) => ({
  food: word(a.name),
  limit: limit('high'),
  aMinutes: minutes(a.median ?? 0),
  bMinutes: minutes(b.median ?? 0),
});

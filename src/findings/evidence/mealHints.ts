import type { Measures } from '../../model/measures.ts';
import type { Comparison, ComparisonId, Side } from '../../model/occasions.ts';
import type { Params, Quantity } from '../../model/quantity.ts';
import { quantile } from '../../stats/quantile.ts';
import { absent, holds, untold } from '../finding.ts';
import { also, counts, leftOut, ofKind, partOfDay, seenOn, strongest } from './hint.ts';
import { limit, minutes, rise, word } from './quantities.ts';

/** Minutes above range after meals of two kinds, when the guarded comparison lets it stand as a hint; `more` is what the sentences of one finding alone ask for. */
export function mealHint<P extends Params = Record<never, Quantity>>(
  { comparisons }: Measures,
  id: ComparisonId,
  { sign, more }: { sign?: 1 | -1; more?: (one: Comparison) => P } = {},
) {
  const found = ofKind(comparisons, id);
  if ('why' in found) return untold(found.why);
  const one = sign ? strongest(found.list, sign) : (strongest(found.list, 1) ?? strongest(found.list, -1));
  if (!one) return absent;
  const longer = (one.difference?.value ?? 0) > 0 ? 'first' : 'second';
  const asked = more?.(one) as P;
  const params = { ...sides(one), ...counts(one), ...leftOut(one), ...partOfDay(one), ...asked, longer: word(longer) };
  return holds(params, seenOn(one.a), undefined, also(one));
}

/** Where the meals of the two sides began, in the middle: what begins high stays high. */
export function starts({ meals }: Measures) {
  const middle = ({ occasions }: Side): number | null => {
    const at = new Set(occasions.map(({ date, minute }) => `${date} ${minute}`));
    const began = (meals.ok ? meals.value : []).flatMap(({ date, minute, course }) =>
      course !== null && at.has(`${date} ${minute}`) ? [course.baseline as number] : [],
    );
    return began.length === 0 ? null : quantile(Float64Array.from(began).sort(), 0.5);
  };
  return ({ a, b }: Comparison) => {
    const [first, second] = [middle(a), middle(b)];
    return {
      begun: word(first === null || second === null ? 'no' : 'yes'),
      aStart: rise(first ?? 0),
      bStart: rise(second ?? 0),
    };
  };
}

const sides = ({ a, b }: Comparison) => ({
  food: word(a.name),
  limit: limit('high'),
  aMinutes: minutes(a.median ?? 0),
  bMinutes: minutes(b.median ?? 0),
});

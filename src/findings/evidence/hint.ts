import type { Evidence } from '../../model/look.ts';
import type { Measured, Why } from '../../model/measured.ts';
import type { Comparison, ComparisonId, Side } from '../../model/occasions.ts';
import { WINDOW } from '../../occasions/mealCourse.ts';
import { stretchFrom } from './places.ts';
import { count, word } from './quantities.ts';

/** The comparisons of one kind; `why` when none could be made at all. */
export function ofKind(comparisons: Measured<Comparison[]>, id: ComparisonId): { list: Comparison[] } | { why: Why } {
  if (!comparisons.ok) return { why: comparisons.why };
  const list = comparisons.value.filter((one) => one.id === id);
  if (list.every(({ verdict }) => verdict === 'too-few')) return { why: 'too-few-occasions' };
  return { list };
}

/** The hint with the largest difference to one side, or undefined. */
export function strongest(list: readonly Comparison[], sign: 1 | -1): Comparison | undefined {
  const size = ({ difference }: Comparison) => sign * (difference?.value ?? 0);
  return list
    .filter((one) => one.verdict === 'hint' && size(one) > 0)
    .reduce<Comparison | undefined>((best, one) => (best && size(best) >= size(one) ? best : one), undefined);
}

/** Which part of the day a meal comparison looks at; `any` where it is none of them. */
export const partOfDay = ({ slot }: Comparison) => ({ slot: word(slot ?? 'any') });

/** How many occasions each side has, and after how many of them a low was seen. */
export const counts = ({ a, b }: Comparison) => ({
  a: count(a.n),
  b: count(b.n),
  aLow: count(a.lows),
  aOf: count(a.lowsOf),
  bLow: count(b.lows),
  bOf: count(b.lowsOf),
});

export const seenOn = ({ occasions }: Side): Evidence[] => occasions.map((one) => stretchFrom(one, WINDOW));

import type { Measures } from '../../model/measures.ts';
import type { Quantity } from '../../model/quantity.ts';
import { dates, glucose, limit, word } from './quantities.ts';

/**
 * The lowest reading of all, where it lies below that of the lows told: a dip of less than 15 minutes can go further down
 * than any low, and "the lowest number" must not pass it over.
 */
export function deepest({ daily }: Measures, lowest: Quantity): Record<'deeper' | 'deepest' | 'deepestDate', Quantity> {
  const seen = (daily.ok ? daily.value : []).flatMap((day) =>
    day.lowest === null ? [] : [{ date: day.date, lowest: day.lowest, beyond: day.limits.lowest }],
  );
  const under =
    lowest.q === 'glucose' && (lowest.limit ?? 0) >= 0 ? seen.filter((day) => day.lowest < lowest.value) : [];
  const [first] = under.sort((a, b) => a.lowest - b.lowest);
  return {
    deeper: word(first === undefined ? 'no' : 'yes'),
    deepest: first === undefined ? limit('low') : glucose(first.lowest, first.beyond),
    deepestDate: dates(first === undefined ? [] : [first.date]),
  };
}

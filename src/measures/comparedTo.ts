import { type Comparison, compare } from '../comparing/thenAndNow.ts';
import type { PeriodSums } from '../model/thenAndNow.ts';
import type { Context } from './context.ts';
import { periodSums } from './daySums.ts';

/** The whole period beside an earlier one, drawn once however many measures ask. */
export function comparedTo(shared: Context, before: PeriodSums): Comparison {
  const known = shared.compared.get(before);
  if (known) return known;
  const found = compare(before, periodSums(shared));
  shared.compared.set(before, found);
  return found;
}

import type { Measures } from '../../model/measures.ts';
import type { Quantity } from '../../model/quantity.ts';
import type { Change, Compared } from '../../model/thenAndNow.ts';
import { absent, quiet } from '../finding.ts';
import { count } from './quantities.ts';

/** A change by more than day-to-day noise, which way it went, and how long the two periods were. */
interface FirstChange {
  change: Change;
  way: 'more' | 'less';
  lengths: Record<'thenDays' | 'nowDays', Quantity>;
}

/** The first of these numbers that changed by more than day-to-day noise; a look where none did. */
export function firstChanged(
  { thenAndNow }: Measures,
  numbers: readonly Compared[],
): FirstChange | { look: ReturnType<typeof quiet> } {
  if (!thenAndNow.ok) return { look: quiet(thenAndNow.why) };
  const { changes, before, now } = thenAndNow.value;
  const changed = numbers.flatMap(
    (of) => changes.find((each) => each.of === of && each.verdict === 'more-than-noise') ?? [],
  );
  const [change] = changed;
  if (!change) return { look: absent };
  const way = change.change > 0 ? 'more' : 'less';
  return { change, way, lengths: { thenDays: count(before.days), nowDays: count(now.days) } };
}

import type { LocalDate } from '../../model/glucose.ts';
import type { Episode, Measures } from '../../model/measures.ts';
import type { Remark } from '../../model/remarks.ts';
import { count } from './quantities.ts';

/** Of these lows, how many a remark about how it felt belongs to: those are not asked about as if nobody had said. */
export function felt({ remarks, lows }: Measures, which: (low: Episode) => boolean = () => true) {
  const list = lows.ok ? lows.value.list : [];
  const feltAt = new Set(
    speaking(remarks).flatMap(({ near }) => near.flatMap((one) => (one.of === 'low' ? one.index : []))),
  );
  const asked = list.map((low, index) => ({ low, index })).filter(({ low }) => which(low));
  return { felt: count(asked.filter(({ index }) => feltAt.has(index)).length), feltOf: count(asked.length) };
}

/** The same of nights. */
export function feltNights({ remarks }: Measures, nights: readonly LocalDate[]) {
  const feltOn = new Set(
    speaking(remarks).flatMap(({ near }) => near.flatMap((one) => (one.of === 'night' ? one.date : []))),
  );
  return { felt: count(nights.filter((date) => feltOn.has(date)).length), feltOf: count(nights.length) };
}

const speaking = (remarks: Measures['remarks']): Remark[] =>
  remarks.ok ? remarks.value.filter((remark) => remark.felt) : [];

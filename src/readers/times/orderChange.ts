import type { DateOrder } from '../../model/detail.ts';
import { openDay } from './dayOrder.ts';

/** Share of the dates that one odd cell may be; more of them are another half of the file (ours). */
const ODD = 0.1;
/** A step of a month where the other order steps a day. */
const MONTH = 27;

/**
 * Where the order of day and month changes within a column: the index of the first date of the other order. Told by dates that one
 * order cannot read on either side, or by steps: where the order settled on goes by months, the other goes by days.
 */
export function orderChange(codes: readonly number[], order: DateOrder): number | undefined {
  const other: DateOrder = order === 'day-first' ? 'month-first' : 'day-first';
  const [own, turned] = [order, other].map((one) => codes.map((code) => openDay(code, one))) as [number[], number[]];
  const unfit = own.flatMap((day, i) => (Number.isNaN(day) && !Number.isNaN(turned[i]!) ? [i] : []));
  const fit = turned.filter((day, i) => Number.isNaN(day) && !Number.isNaN(own[i]!)).length;
  if (unfit.length > codes.length * ODD && fit > codes.length * ODD) return unfit[0];
  let [byMonths, byDays, first] = [0, 0, 0];
  for (let i = 1; i < codes.length; i++) {
    const [a, b] = [Math.abs(own[i]! - own[i - 1]!), Math.abs(turned[i]! - turned[i - 1]!)];
    if (a >= MONTH && b <= 2) {
      if (byMonths++ === 0) first = i;
    } else if (a <= 2 && !(b <= 2)) byDays++;
  }
  return byMonths >= 2 && byDays >= 2 ? first : undefined;
}

/**
 * Where the clock itself tells that the order changes: at one change of the date the rows go on within the hour in one order alone, at another
 * in the other alone. `goesOn` tells so of a date. The index of the first date to which the earlier order no longer leads.
 */
export function orderChangeByClock(
  count: number,
  goesOn: (index: number, order: DateOrder) => boolean,
): number | undefined {
  const only = (order: DateOrder, other: DateOrder): number => {
    for (let i = 1; i < count; i++) if (goesOn(i, order) && !goesOn(i, other)) return i;
    return 0;
  };
  const [day, month] = [only('day-first', 'month-first'), only('month-first', 'day-first')];
  if (day === 0 || month === 0) return undefined;
  const earlier = day < month ? 'day-first' : 'month-first';
  let change = Math.min(day, month) + 1;
  while (goesOn(change, earlier)) change++;
  return change;
}

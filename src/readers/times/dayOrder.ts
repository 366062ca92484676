import type { ChoiceOf } from '../../model/choices.ts';
import type { DateOrder, Detail } from '../../model/detail.ts';
import { DAY_MS, dateOf } from '../../time/calendar.ts';

export type OrderEvidence = NonNullable<ChoiceOf<'date-order'>['evidence']>;

/** The first and the last date as an order reads them. */
export type OrderSpan = Extract<Detail, { is: 'order-span' }>;

export type OrderVerdict =
  | { ok: true; order: DateOrder; evidence: OrderEvidence }
  | { ok: false; why: 'mixed' | 'unclear'; readings: OrderSpan[]; rows: [number, number] };

/** No sensor stored readings before this year; earlier dates are clocks that were never set (common practice, no source). */
export const FIRST_YEAR = 1999;

const MONTH_DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days since 1970-01-01 of a proleptic Gregorian date; NaN when there is no such date. */
export function dayNumber(y: number, m: number, d: number): number {
  if (m < 1 || m > 12 || d < 1 || d > MONTH_DAYS[m - 1]!) return Number.NaN;
  if (m === 2 && d === 29 && (y % 4 !== 0 || (y % 100 === 0 && y % 400 !== 0))) return Number.NaN;
  const shifted = m <= 2 ? y - 1 : y;
  const era = Math.floor(shifted / 400);
  const ofEra = shifted - era * 400;
  const ofYear = Math.floor((153 * (m + (m > 2 ? -3 : 9)) + 2) / 5) + d - 1;
  return era * 146097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719468;
}

/** Day number of a packed open date (dates.ts) under an order. Two-digit years are 20yy: there was no sensor before. */
export function openDay(code: number, order: DateOrder): number {
  const a = code >>> 21;
  const b = (code >>> 14) & 127;
  const c = code & 16383;
  if (order === 'year-first') return dayNumber(2000 + a, b, c);
  const year = c < 100 ? 2000 + c : c;
  return order === 'day-first' ? dayNumber(year, b, a) : dayNumber(year, a, b);
}

/** A packed open date, its parts in the order of the file: `4/13/2026`. */
export const asWritten = (code: number): string => `${code >>> 21}/${(code >>> 14) & 127}/${code & 16383}`;

/** The date of a day number, `YYYY-MM-DD`. */
export const isoDay = (day: number): string => dateOf(day * DAY_MS);

/**
 * Settles the order of day, month and year over a whole column of open dates: impossible dates first, then dates in
 * the future, then whether neighbouring days follow each other. `codes` are the dates in file order, repeats left
 * out; `rows` say where each stood; `smooth` tells of each whether it came within an hour after the one before.
 */
export function settleOrder(
  codes: number[],
  rows: number[],
  shortYear: boolean,
  lastDay: number,
  smooth: (index: number, order: DateOrder) => boolean,
): OrderVerdict {
  const orders: DateOrder[] = shortYear ? ['day-first', 'month-first', 'year-first'] : ['day-first', 'month-first'];
  const days = orders.map((order) => codes.map((code) => openDay(code, order)));
  // A date that is none under any order (31 June) says nothing about the order.
  const speaking = codes.map((_, i) => i).filter((i) => days.some((column) => !Number.isNaN(column[i]!)));
  const against = days.map((column) => speaking.find((i) => Number.isNaN(column[i]!)));
  const alive = orders.map((_, k) => k).filter((k) => against[k] === undefined);
  const sampleOf = (k: number): OrderSpan => {
    const valid = speaking.filter((i) => !Number.isNaN(days[k]![i]!));
    const first = valid[0];
    const last = valid[valid.length - 1];
    const day = (i: number | undefined): string => (i === undefined ? '-' : isoDay(days[k]![i]!));
    return { is: 'order-span', order: orders[k]!, from: day(first), to: day(last) };
  };
  if (alive.length === 0) {
    return {
      ok: false,
      why: 'mixed',
      readings: orders.map((_, k) => sampleOf(k)),
      rows: [rows[against[0]!]!, rows[against[1]!]!],
    };
  }
  const accept = (k: number, evidence: OrderEvidence): OrderVerdict => ({ ok: true, order: orders[k]!, evidence });
  if (alive.length === 1) {
    const other = against.findIndex((i) => i !== undefined);
    return accept(alive[0]!, { is: 'named', name: asWritten(codes[against[other]!]!) });
  }
  const different = speaking.find((i) => alive.some((k) => days[k]![i] !== days[alive[0]!]![i]));
  if (different === undefined) return accept(alive[0]!, { is: 'same-date' });
  const past = alive.filter((k) => speaking.every((i) => days[k]![i]! <= lastDay));
  const future = alive.filter((k) => speaking.filter((i) => days[k]![i]! > lastDay).length * 2 >= speaking.length);
  if (past.length === 1 && future.length === alive.length - 1) return accept(past[0]!, { is: 'other-order-future' });
  const steps = alive.map((k) => {
    let good = 0;
    let all = 0;
    let unlike = false;
    for (let s = 1; s < speaking.length; s++) {
      const step = Math.abs(days[k]![speaking[s]!]! - days[k]![speaking[s - 1]!]!);
      if (step === 0) continue;
      all++;
      if (step === 1) {
        good++;
        if (!smooth(speaking[s]!, orders[k]!)) unlike = true;
      }
    }
    return { k, good, all, share: all === 0 ? 0 : good / all, enough: all >= 3 || (all > 0 && !unlike) };
  });
  const best = steps.filter((s) => s.share >= 0.9 && s.enough);
  if (best.length === 1 && steps.every((s) => s === best[0] || s.share < 0.5)) {
    return accept(best[0]!.k, { is: 'day-steps', steps: best[0]!.good, of: best[0]!.all });
  }
  return {
    ok: false,
    why: 'unclear',
    readings: alive.map(sampleOf),
    rows: [rows[different]!, rows[different]!],
  };
}

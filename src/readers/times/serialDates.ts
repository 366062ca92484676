import type { Choice } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import { dayNumber, isoDay } from './dayOrder.ts';
import { SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** The days from which spreadsheets count: 0 of either count, as days since 1970-01-01. */
export const DAY_0 = { 1900: dayNumber(1899, 12, 30), 1904: dayNumber(1904, 1, 1) };

/** Day 0 of a column of a spreadsheet's day numbers. Undefined after a refusal, which shows both readings of the last day. */
export function serialBase(
  cells: TimeCells,
  lineOf: (k: number) => number,
  wanted: 1900 | 1904 | undefined,
  lastDay: number,
  book: IssueBook,
  choices: Choice[],
): number | undefined {
  if (wanted) {
    choices.push({ id: 'serial-dates', value: wanted, by: 'user' });
    return DAY_0[wanted];
  }
  let top = 0;
  let topAt = 0;
  for (let k = 0; k < cells.ms.length; k++) {
    if (cells.shape[k] !== SHAPE.serial || cells.ms[k]! <= top) continue;
    top = cells.ms[k]!;
    topAt = k;
  }
  if (top + DAY_0[1904] <= lastDay + 365) {
    const as = (year: 1900 | 1904) =>
      ({
        is: 'serial-read',
        year,
        serial: top,
        line: lineOf(topAt),
        date: isoDay(Math.floor(top) + DAY_0[year]),
      }) as const;
    book.add('serial-dates-unclear', 'refusal', lineOf(topAt), {
      actual: as(1900),
      expected: as(1904),
      question: { of: 'layout', field: 'serialDates', answer: JSON.stringify({ serialDates: 1900 }) },
    });
    return undefined;
  }
  choices.push({ id: 'serial-dates', value: 1900, by: 'file', evidence: { is: 'other-count-future' } });
  return DAY_0[1900];
}

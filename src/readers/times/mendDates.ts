import type { IssueBook } from '../book.ts';
import { mendHours24 } from './hours24.ts';
import type { TimeCells, TimePlan } from './timeColumn.ts';
import { mendTurned } from './turnedDates.ts';
import type { Walls } from './wall.ts';
import { type DaySpan, mendYearDays } from './yearDays.ts';

/** Puts right what a spreadsheet turned and a clock counted to 24, and says so. False after a refusal. */
export function mendDates(
  plan: TimePlan,
  dates: TimeCells,
  lineOf: (k: number) => number,
  book: IssueBook,
  walls: Pick<Walls, 'yearDays'>,
  known: DaySpan | undefined,
): boolean {
  const turned = mendTurned(dates);
  if (turned === 'unclear') {
    book.add('dates-turned-unclear', 'refusal', lineOf(0), { actual: dates.column.name });
    return false;
  }
  if (turned !== 'none') book.add('dates-turned', 'warning', 0, { count: turned });
  const clock = plan.kind === 'two' ? plan.clock : dates;
  const yearDays = mendYearDays(dates, clock, known);
  walls.yearDays = yearDays > 0;
  if (walls.yearDays) book.add('dates-year-day', 'warning', 0, { count: yearDays });
  const hours = mendHours24(clock, dates.date);
  if (hours === 'unclear') {
    book.add('hours-to-24-unclear', 'refusal', lineOf(0), { actual: clock.column.name });
    return false;
  }
  if (hours !== 'none') book.add('hours-to-24', 'note', 0, { count: hours });
  return true;
}

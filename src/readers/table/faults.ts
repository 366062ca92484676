import type { GlucoseUnit } from '../../model/glucose.ts';
import type { Role } from '../../schemas/layout.ts';
import type { IssueBook } from '../book.ts';
import { CELL } from '../glucose/glucoseCell.ts';
import { PLAUSIBLE } from '../glucose/unit.ts';
import { SHAPE } from '../times/stamp.ts';
import type { TimePlan } from '../times/timeColumn.ts';
import { TIME_FAULT } from '../times/wall.ts';
import { timedByOther } from './evenRows.ts';
import type { Column } from './header.ts';
import { cellText, type Records, recordText } from './records.ts';
import type { Misfit } from './rowFit.ts';

const NO_CONTENT: Role[] = ['time', 'date', 'clock', 'offset', 'unit', 'kind', 'person', 'ignore'];

/** The text of the cells that tell a row's time. */
function timeText(records: Records, row: number, plan: TimePlan): string {
  const cells = plan.kind === 'two' ? [plan.day, plan.clock] : [plan.kind === 'days' ? plan.day : plan.cells];
  return cells
    .map(({ column }) => cellText(records, row, column.index))
    .filter((text) => text !== '')
    .join(' ');
}

/** A whole time, or a clock time beside a value, is a row of data whatever else is missing of it. */
function holdsTime(plan: TimePlan, k: number, bare: boolean): boolean {
  if (plan.kind === 'two') return !bare && plan.clock.shape[k] === SHAPE.clock;
  return plan.kind === 'one' && plan.cells.shape[k] === SHAPE.stamp;
}

/** Tells why a whole row is out. True: set aside; false: it was no data at all (a title, a sum, a footer). */
export function tellRow(
  book: IssueBook,
  records: Records,
  row: number,
  k: number,
  line: number,
  misfit: Misfit | undefined,
  fault: number,
  plan: TimePlan,
  today: string,
  columns: Column[],
): boolean {
  if (misfit) {
    book.add(misfit, 'warning', line, { actual: recordText(records, row) });
    return true;
  }
  const text = timeText(records, row, plan);
  // Words where the time should stand mean a summary or a title; a broken time has digits in it.
  const bare = !columns.some(({ role, index }) => !NO_CONTENT.includes(role) && cellText(records, row, index) !== '');
  const data = holdsTime(plan, k, bare);
  if (!data && (fault === TIME_FAULT.empty || (fault === TIME_FAULT.unreadable && (bare || !/\d/.test(text))))) {
    if (timedByOther(records, row)) {
      book.add('time-unreadable', 'warning', line, { actual: recordText(records, row) });
      return true;
    }
    book.add('no-time', 'note', line, { actual: recordText(records, row) });
    return false;
  }
  if (fault === TIME_FAULT.unreadable || fault === TIME_FAULT.empty)
    book.add('time-unreadable', 'warning', line, { actual: text });
  else if (fault === TIME_FAULT.impossible) book.add('date-impossible', 'warning', line, { actual: text });
  else if (fault === TIME_FAULT.early)
    book.add('clock-not-set', 'warning', line, { actual: text, expected: '1999-01-01' });
  else book.add('date-in-future', 'warning', line, { actual: text, expected: today });
  return true;
}

/** Tells why a glucose cell cannot be used. */
export function tellGlucose(book: IssueBook, state: number, line: number, text: string, unit: GlucoseUnit): void {
  if (state === CELL.sentinel) book.add('sentinel-value', 'warning', line, { actual: text });
  else if (state === CELL.date) book.add('value-turned-date', 'warning', line, { actual: text });
  else if (state === CELL.amount) book.add('value-of-note', 'warning', line, { actual: text });
  else if (state === CELL.text) book.add('value-not-a-number', 'warning', line, { actual: text });
  else if (state === CELL.unit)
    book.add('value-unit-unknown', 'warning', line, { actual: text, expected: 'mg/dL, mmol/L' });
  else {
    const { low, high } = PLAUSIBLE[unit];
    book.add('value-impossible', 'warning', line, { actual: text, expected: { is: 'range', low, high, unit } });
  }
}

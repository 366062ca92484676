import type { Choice } from '../../model/input.ts';
import type { DateOrder } from '../../model/told.ts';
import { DAY_MS } from '../../time/calendar.ts';
import type { IssueBook } from '../book.ts';
import { asWritten, isoDay, type OrderSpan, openDay, settleOrder } from './dayOrder.ts';
import { SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** An order that something other than the dates themselves speaks for. */
export interface OrderHint {
  order: DateOrder;
  evidence: string;
}

/** The date order of one column of cells. undefined: no date was open. null: refused, and told in the book. */
export function orderOf(
  cells: TimeCells,
  lineOf: (k: number) => number,
  wanted: DateOrder | undefined,
  hint: OrderHint | undefined,
  lastDay: number,
  book: IssueBook,
  choices: Choice[],
): DateOrder | undefined | null {
  const codes: number[] = [];
  const rows: number[] = [];
  let short = false;
  for (let k = 0; k < cells.open.length; k++) {
    if (cells.open[k] === 0) continue;
    if (cells.open[k] === 2) short = true;
    if (codes.length > 0 && codes[codes.length - 1] === cells.date[k]) continue;
    codes.push(cells.date[k]!);
    rows.push(k);
  }
  if (codes.length === 0) return undefined;
  const smooth = (index: number, order: DateOrder): boolean => {
    const k = rows[index]!;
    if (k === 0 || cells.shape[k] !== SHAPE.stamp) return false;
    const now = openDay(cells.date[k]!, order) * DAY_MS + cells.ms[k]!;
    const before = openDay(cells.date[k - 1]!, order) * DAY_MS + cells.ms[k - 1]!;
    return Math.abs(now - before) <= 3_600_000;
  };
  const verdict = settleOrder(codes, rows, short, lastDay, smooth);
  // "Year first" says nothing about 31/10/2023, whose year stands last for certain.
  if (wanted && (wanted !== 'year-first' || short)) {
    if (verdict.ok && verdict.order !== wanted && verdict.evidence.is !== 'same-date') {
      book.add('date-order-contradicts-file', 'warning', 0, { actual: verdict.evidence, expected: { is: wanted } });
    }
    choices.push({ id: 'date-order', value: wanted, by: 'user' });
    return wanted;
  }
  if (verdict.ok) {
    choices.push({ id: 'date-order', value: verdict.order, by: 'file', evidence: verdict.evidence });
    return verdict.order;
  }
  const other = formatHint(cells.column.name) ?? hint;
  if (verdict.why === 'unclear' && other && (other.order !== 'year-first' || short)) {
    choices.push({ id: 'date-order', value: other.order, by: 'file', evidence: { is: 'named', name: other.evidence } });
    return other.order;
  }
  const [first, second] = verdict.rows;
  const sample = (k: number) => ({ text: asWritten(cells.date[k]!), line: lineOf(k) });
  if (verdict.why === 'mixed') {
    book.add('date-order-mixed', 'refusal', lineOf(first), {
      actual: [first, second].map((k) => ({ is: 'at-line', ...sample(k) })),
      expected: verdict.readings,
      question: { of: 'day-order', answer: 'day-first' },
    });
  } else {
    const dated = ({ order, from, to }: OrderSpan) =>
      ({
        is: 'date-read',
        ...sample(first),
        date: isoDay(openDay(cells.date[first]!, order)),
        order,
        from,
        to,
      }) as const;
    book.add('date-order-unclear', 'refusal', lineOf(first), {
      actual: dated(verdict.readings[0]!),
      expected: dated(verdict.readings[1]!),
      question: { of: 'day-order', answer: 'day-first' },
    });
  }
  return null;
}

/** A pattern such as `DD/MM/YYYY` written beside the column's name. */
function formatHint(name: string): OrderHint | undefined {
  const pattern = /(?:^|[^a-z])(d{1,2}|m{1,2}|y{2,4})[./ -](d{1,2}|m{1,2})[./ -](?:d{1,2}|y{2,4})(?![a-z])/i.exec(name);
  const first = pattern?.[1]?.[0]?.toLowerCase();
  if (!pattern || !first) return undefined;
  const order = first === 'd' ? 'day-first' : first === 'm' ? 'month-first' : 'year-first';
  return { order, evidence: name };
}

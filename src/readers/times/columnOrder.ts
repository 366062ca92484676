import type { DateOrder } from '../../model/detail.ts';
import type { Choice } from '../../model/input.ts';
import { DAY_MS } from '../../time/calendar.ts';
import type { IssueBook } from '../book.ts';
import { asWritten, isoDay, type OrderSpan, openDay, settleOrder } from './dayOrder.ts';
import { orderChange, orderChangeByClock } from './orderChange.ts';
import { SHAPE } from './stamp.ts';
import { NOT_A_TIME, type TimeCells } from './timeColumn.ts';

/** An order that something other than the dates themselves speaks for. */
export interface OrderHint {
  order: DateOrder;
  evidence: string;
  /** Days, since 1970, between which that evidence lies; absent where it stands in the file itself. */
  span?: { from: number; to: number };
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
  const sample = (k: number) => ({ text: asWritten(cells.date[k]!), line: lineOf(k) });
  const at = (k: number) => ({ is: 'at-line', ...sample(k) }) as const;
  const leaning = verdict.ok && verdict.order !== 'year-first' ? verdict.order : (wanted ?? 'day-first');
  const byClock = short ? undefined : orderChangeByClock(codes.length, smooth);
  const change = short ? undefined : (orderChange(codes, leaning) ?? byClock);
  if (change !== undefined && (verdict.ok || wanted || byClock !== undefined)) {
    const k = rows[change]!;
    book.add('date-order-changes', 'refusal', lineOf(k), {
      actual: at(k),
      expected: at(rows[Math.max(0, change - 1)]!),
    });
    return null;
  }
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
    const fits = spanFit(other, codes);
    if (fits !== 'against') {
      const { order, evidence } = other;
      choices.push({ id: 'date-order', value: order, by: 'file', evidence: { is: 'named', name: evidence } });
      if (fits === 'open')
        book.add('date-order-borrowed', 'warning', lineOf(rows[0]!), {
          actual: at(rows[0]!),
          expected: { is: 'order-of', order, name: evidence },
          question: { of: 'day-order', answer: order },
        });
      return order;
    }
  }
  if (setFewAside(cells)) return undefined;
  const [first, second] = verdict.rows;
  if (verdict.why === 'mixed') {
    const conflict = { actual: [at(first), at(second)], expected: verdict.readings };
    // One odd date may be left out; where half of them are of another order, either order reads the other half wrong.
    if (change !== undefined) book.add('date-order-mixed', 'refusal', lineOf(first), conflict);
    else
      book.add('date-order-odd', 'refusal', lineOf(first), {
        ...conflict,
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

/** Days that notes may lie before and after another file's readings (ours). */
const DAYS_OUTSIDE = 3;

/** Whether only the other file's order brings these dates beside its own, or only the other order does; `open`: neither tells. */
function spanFit({ order, span }: OrderHint, codes: readonly number[]): 'for' | 'against' | 'open' {
  if (!span || order === 'year-first') return 'for';
  const within = (one: DateOrder): boolean =>
    codes.every((code) => {
      const day = openDay(code, one);
      return Number.isNaN(day) || (day >= span.from - DAYS_OUTSIDE && day <= span.to + DAYS_OUTSIDE);
    });
  const [own, other] = [within(order), within(order === 'day-first' ? 'month-first' : 'day-first')];
  return own === other ? 'open' : own ? 'for' : 'against';
}

/** A pattern such as `DD/MM/YYYY` written beside the column's name. */
function formatHint(name: string): OrderHint | undefined {
  const pattern = /(?:^|[^a-z])(d{1,2}|m{1,2}|y{2,4})[./ -](d{1,2}|m{1,2})[./ -](?:d{1,2}|y{2,4})(?![a-z])/i.exec(name);
  const first = pattern?.[1]?.[0]?.toLowerCase();
  if (!pattern || !first) return undefined;
  const order = first === 'd' ? 'day-first' : first === 'm' ? 'month-first' : 'year-first';
  return { order, evidence: name };
}

/** So small a share of dates whose order is open, among dates that are certain, stops no file (ours). */
const FEW_OPEN = 0.05;

/** Takes the time of rows away, to be told one by one, where nearly all other dates of the column are certain. */
function setFewAside({ open, shape, flags, counts }: TimeCells): boolean {
  let few = 0;
  let dated = 0;
  for (let k = 0; k < open.length; k++) {
    if (shape[k] !== SHAPE.stamp && shape[k] !== SHAPE.day) continue;
    dated++;
    if (open[k] !== 0) few++;
  }
  if (few === 0 || few > dated * FEW_OPEN) return false;
  for (let k = 0; k < open.length; k++) {
    if (open[k] === 0 || (shape[k] !== SHAPE.stamp && shape[k] !== SHAPE.day)) continue;
    counts[shape[k]!]!--;
    shape[k] = SHAPE.none;
    open[k] = 0;
    flags[k] = NOT_A_TIME;
  }
  return true;
}

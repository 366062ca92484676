import type { IssueBook } from '../book.ts';
import type { GlucoseCells } from '../glucose/glucoseCell.ts';
import type { Column } from '../table/header.ts';
import { cellText, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import type { TimeCells } from '../times/timeColumn.ts';
import type { Group } from './groups.ts';
import type { OpenKinds } from './kinds.ts';
import type { TwoClocks } from './oneClock.ts';
import type { Unheard } from './unheard.ts';

/** Groups shown in one question, the largest first, and words in its answer. */
const SHOWN = 6;
/** Letters of a file's own word in an answer. */
const LONGEST = 40;

const groupOf = ({ word, rows, curve: { n, low, high } }: Group) =>
  n === 0 ? ({ is: 'bare-group', word, rows } as const) : ({ is: 'group', word, rows, low, high } as const);

/** Asks what the words of a column mean: they could be doses, finger sticks, other people's. */
export function askKinds(book: IssueBook, { column, groups, unknown, seen, kinds }: OpenKinds, line: number): void {
  const asked = new Set(unknown.slice(0, SHOWN));
  const open = Object.fromEntries([...asked].map((word) => [word.slice(0, LONGEST), '…']));
  // Whatever is asked for is shown, and what it stands beside.
  const isAsked = ({ word }: Group): boolean => asked.has(word) || seen[word] !== undefined;
  const filled = groups.filter(({ word, curve }) => word !== '' || curve.n > 0);
  const ranked = [...filled].sort((a, b) => Number(isAsked(b)) - Number(isAsked(a)) || b.rows - a.rows);
  const few = new Set(ranked.filter((group, i) => i < SHOWN || isAsked(group)));
  const shown = filled.filter((group) => few.has(group)).sort((a, b) => b.rows - a.rows);
  book.add(kinds ? 'kinds-unknown' : 'column-parts-values', 'refusal', line, {
    actual: shown.map(groupOf),
    expected: column.name,
    question: { of: 'layout', field: 'kinds', answer: JSON.stringify({ kinds: { ...seen, ...open } }) },
  });
}

/** Asks which of two clocks is the wearer's, with one row read by both. */
export function askClocks(book: IssueBook, { a, b, row }: TwoClocks, records: Records, table: Table): void {
  const r = table.from + row;
  const shown = ({ column: { name, index } }: TimeCells) =>
    ({ is: 'column-cell', name, text: cellText(records, r, index) }) as const;
  book.add('two-clocks', 'refusal', records.line[r]!, {
    actual: shown(a),
    expected: shown(b),
    question: meaning({ [a.column.name]: 'time', [b.column.name]: 'ignore' }),
  });
}

/** Asks about a column of halves of the day that does not fit its clock. */
export function askHalf(book: IssueBook, half: Column, clock: TimeCells, line: number): void {
  book.add('half-of-day-unclear', 'refusal', line, {
    actual: half.name,
    expected: clock.column.name,
    question: meaning({ [half.name]: 'ignore' }),
  });
}

/** Asks which of two columns holds the sensor's readings. */
export function askSensor(book: IssueBook, a: Column, b: Column): void {
  const place = (column: Column): string => (a.name === b.name ? `#${column.index + 1}` : column.name);
  book.add('two-value-columns', 'refusal', 0, {
    actual: a.name,
    expected: b.name,
    question: meaning({ [place(a)]: 'sensor', [place(b)]: 'ignore' }),
  });
}

/** Asks what a column holds that may be glucose by its name or unit, and whose values neither run like a sensor's nor lie near one's. */
export function askMeaning(
  book: IssueBook,
  { column, value }: GlucoseCells,
  line: number,
  example: 'fingerstick' | 'ignore' = 'fingerstick',
): void {
  const numbers = value.filter((number) => !Number.isNaN(number)).sort();
  const [low, high] = [numbers[0] ?? 0, numbers.at(-1) ?? 0];
  book.add('column-unknown', 'refusal', line, {
    actual: column.name,
    expected: { is: 'values-seen', count: numbers.length, low, high },
    question: meaning({ [column.name]: example }),
  });
}

/** Asks about numbers under an unknown name that run as a sensor's do, where nothing else holds readings. */
export function askUnheard(book: IssueBook, { column, count, low, high }: Unheard, line: number): void {
  book.add('column-like-glucose', 'refusal', line, {
    actual: column.name,
    expected: { is: 'values-seen', count, low, high },
    question: meaning({ [column.name === '' ? `#${column.index + 1}` : column.name]: 'sensor' }),
  });
}

export const meaning = (meanings: Record<string, string>) =>
  ({ of: 'layout', field: 'meanings', answer: JSON.stringify({ meanings }) }) as const;

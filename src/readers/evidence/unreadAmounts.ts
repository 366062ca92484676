import type { ColumnAccount } from '../../model/input.ts';
import { NOTE_ROLES } from '../notes/rowNotes.ts';
import type { Reading } from '../reading.ts';
import type { Column } from '../table/header.ts';
import { readNumber } from '../table/numbers.ts';
import { locate, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import type { Claimed } from './claim.ts';
import { type Profile, SAMPLE } from './describe.ts';
import { meaning } from './questions.ts';

/** Sampled cells that tell what a column holds (ours). */
const ENOUGH = 10;
/** Amounts are noted now and then; what a device or a formula fills in stands in most rows (ours). */
const MOST_ROWS = 0.5;
/** Amounts that a person notes, and what else may be measured beside them. */
const NOTED_UNITS = ['g', 'IU'];
const OTHER_UNIT = /[([]\s*(?:kg|lbs?|mm\s?hg|bpm|[°℃%]|k?m|cm|kcal|kj|min|s|h)\b/iu;

/** What else was said of a column that may hold them: that its words, here numbers, tell no kinds apart. */
const MAY_BE_AMOUNTS: readonly ColumnAccount['why'][] = ['numbers', 'constant', 'no-groups'];

interface Numbers {
  filled: number;
  numbers: number;
  low: number;
  high: number;
}

/** Whether every cell of a column that holds anything holds a number and nothing else. */
export function holdsOnlyNumbers(records: Records, { from, to }: Table, profile: Profile): boolean {
  if (profile.numbers < profile.cells) return false;
  if (profile.cells >= ENOUGH || to - from <= SAMPLE) return profile.cells > 0;
  const { filled, numbers } = numbersOf(records, from, to, profile.index, true);
  return filled > 0 && numbers === filled;
}

/**
 * Tells of numbers that may be amounts a person noted and that nothing was made of: those under the name of a meal, and those that stand
 * here and there under a name nobody knows. What they are decides what a report says of meals and doses.
 */
export function tellUnreadAmounts(
  { records, book }: Reading,
  { from, to, header }: Table,
  columns: readonly Column[],
  { accounts }: Claimed,
): void {
  const has = (roles: readonly string[]): boolean => columns.some(({ role }) => roles.includes(role));
  // In a log, which holds no readings, every row may hold an amount.
  const often = has(['sensor', 'glucose', 'value', 'fingerstick']) || !has(NOTE_ROLES) ? MOST_ROWS : 1;
  for (const { role, given, name, index, unit } of columns) {
    if (role !== 'ignore' || given) continue;
    const why = accounts.get(index)?.why;
    if (why !== undefined && !MAY_BE_AMOUNTS.includes(why)) continue;
    const ofMeal = why === 'numbers';
    if (!ofMeal && (conceptsOf(tokens(name)).size > 0 || OTHER_UNIT.test(name))) continue;
    const { filled, numbers, low, high } = numbersOf(records, from, to, index, false);
    if (numbers < 2 || numbers * 2 < filled) continue;
    if (!ofMeal && numbers > (to - from) * often && !NOTED_UNITS.includes(unit ?? '')) continue;
    const shown = name === '' ? `#${index + 1}` : name;
    book.add('amounts-unread', 'warning', header < 0 ? 0 : records.line[header]!, {
      actual: shown,
      expected: { is: 'values-seen', count: numbers, low, high },
      question: meaning({ [shown]: '…' }),
    });
  }
}

function numbersOf(records: Records, from: number, to: number, index: number, onlyThose: boolean): Numbers {
  const found: Numbers = { filled: 0, numbers: 0, low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  for (let r = from; r < to; r++) {
    if (!locate(records, r, index, span)) continue;
    found.filled++;
    const value = readNumber(records.bytes, span.from, span.to, look);
    if (Number.isNaN(value)) {
      if (onlyThose) return found;
      continue;
    }
    found.numbers++;
    if (value < found.low) found.low = value;
    if (value > found.high) found.high = value;
  }
  return found;
}

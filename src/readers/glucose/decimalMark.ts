import type { Choice } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import { CELL, type GlucoseCells } from './glucoseCell.ts';

/**
 * Decides over the whole column whether a dot or a comma is its decimal mark; a mark before exactly three digits
 * proves nothing by itself. Cells of the other mark are then thousands. False after a refusal.
 */
export function settleMark(
  cells: GlucoseCells,
  lineOf: (k: number) => number,
  wanted: '.' | ',' | undefined,
  book: IssueBook,
  choices: Choice[],
): boolean {
  const count = [0, 0, 0, 0, 0, 0, 0];
  const firstAt = [-1, -1, -1, -1, -1, -1, -1];
  const { mark } = cells;
  for (let k = 0; k < mark.length; k++) {
    const m = mark[k]!;
    if (m !== 0 && count[m]!++ === 0) firstAt[m] = k;
  }
  const [dot, comma, dot3, comma3] = [count[1]!, count[2]!, count[5]!, count[6]!];
  if (dot + comma + dot3 + comma3 === 0) return true;
  if (!wanted && dot > 0 && comma > 0) {
    const [a, b] = [firstAt[1]!, firstAt[2]!];
    book.add('decimal-marks-mixed', 'refusal', lineOf(Math.max(a, b)), {
      actual: [
        { is: 'at-line', text: `${cells.value[a]}`, line: lineOf(a) },
        { is: 'at-line', text: `${cells.value[b]}`.replace('.', ','), line: lineOf(b) },
      ],
      expected: cells.column.name,
      question: { of: 'layout', field: 'decimalMark' },
    });
    return false;
  }
  if (!wanted && dot + comma === 0) {
    const at = Math.max(firstAt[5]!, firstAt[6]!);
    book.add('thousands-or-decimal', 'refusal', lineOf(at), {
      actual: `${cells.value[at]}`,
      expected: `${Math.round(cells.value[at]! * 1000)}`,
      question: { of: 'layout', field: 'decimalMark' },
    });
    return false;
  }
  const decimal = wanted ?? (dot > 0 ? '.' : ',');
  const other = decimal === '.' ? 2 : 1;
  for (let k = 0; k < mark.length; k++) {
    const m = mark[k]!;
    if (m === (other | 4)) {
      cells.value[k] = Math.round(cells.value[k]! * 1000);
      mark[k] = 0;
    } else if (m === other) cells.state[k] = CELL.text;
  }
  if (choices.some((choice) => choice.id === 'decimal-mark' && choice.value === decimal)) return true;
  if (wanted) choices.push({ id: 'decimal-mark', value: decimal, by: 'user' });
  else {
    const of = decimal === '.' ? dot : comma;
    choices.push({
      id: 'decimal-mark',
      value: decimal,
      by: 'file',
      evidence: { is: 'cells', cells: of, of: cells.filled },
    });
  }
  return true;
}

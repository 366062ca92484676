import type { Choice } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import { CELL, type GlucoseCells } from './glucoseCell.ts';

/** So small a share of cells with the other mark is told and read; more of them are two files in one (ours). */
const FEW = 0.05;
/** In groups of thousands no glucose is written: what is far under the whole numbers beside it is such a group (ours). */
const FAR_UNDER = 10;

/**
 * Decides over the whole column whether a dot or a comma is its decimal mark. A mark before exactly three digits proves
 * nothing by itself, but only one reading of it is glucose: 150.000 beside 149.000, while 1,200 beside 150 is a thousand and
 * no reading. False after a refusal.
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
  const mixed = !wanted && dot > 0 && comma > 0;
  const few = Math.min(dot, comma) < (dot + comma) * FEW;
  if (mixed) {
    const [a, b] = [firstAt[1]!, firstAt[2]!];
    const actual = [
      { is: 'at-line' as const, text: `${cells.value[a]}`, line: lineOf(a) },
      { is: 'at-line' as const, text: `${cells.value[b]}`.replace('.', ','), line: lineOf(b) },
    ];
    const expected = cells.column.name;
    if (few) book.add('decimal-mark-odd', 'note', lineOf(dot < comma ? a : b), { actual, expected });
    else {
      const question = {
        of: 'layout',
        field: 'decimalMark',
        answer: JSON.stringify({ decimalMark: dot < comma ? ',' : '.' }),
      } as const;
      book.add('decimal-marks-mixed', 'refusal', lineOf(Math.max(a, b)), { actual, expected, question });
      return false;
    }
  }
  const unproven = !wanted && dot + comma === 0;
  const decimal = wanted ?? (unproven ? (dot3 >= comma3 ? '.' : ',') : dot >= comma ? '.' : ',');
  const other = decimal === '.' ? 2 : 1;
  const wholePart = unproven ? wholeBeside(cells) : Number.NaN;
  let decimals = 0;
  for (let k = 0; k < mark.length; k++) {
    const m = mark[k]!;
    if (m === (other | 4) || (m > 4 && cells.value[k]! * FAR_UNDER < wholePart)) {
      cells.value[k] = Math.round(cells.value[k]! * 1000);
      mark[k] = 0;
    } else if (m === other && !few) cells.state[k] = CELL.text;
    else if (m !== 0) decimals++;
  }
  if (decimals === 0 || choices.some((choice) => choice.id === 'decimal-mark' && choice.value === decimal)) return true;
  if (wanted) choices.push({ id: 'decimal-mark', value: decimal, by: 'user' });
  else {
    choices.push({
      id: 'decimal-mark',
      value: decimal,
      by: 'file',
      evidence: { is: 'cells', cells: decimals, of: cells.filled },
    });
  }
  return true;
}

/** The middle of the numbers without any mark; NaN where most have one. */
function wholeBeside({ mark, state, value }: GlucoseCells): number {
  const whole: number[] = [];
  let marked = 0;
  for (let k = 0; k < mark.length; k++) {
    if (state[k] !== CELL.number) continue;
    if (mark[k] === 0) whole.push(value[k]!);
    else marked++;
  }
  if (whole.length <= marked) return Number.NaN;
  return whole.sort((a, b) => a - b)[whole.length >> 1]!;
}

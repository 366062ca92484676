import { cellText, type Records } from '../table/records.ts';
import { CLOCK_FLAGS } from '../times/clockCell.ts';
import { halfOf } from '../times/halfWords.ts';
import { SHAPE } from '../times/stamp.ts';
import { NOT_A_TIME, type TimeCells } from '../times/timeColumn.ts';

const HALF = 43_200_000;

/** What a column of halves did to a clock. */
export type HalfVerdict = 'applied' | 'witness' | 'contradicts' | 'gaps';

/**
 * Applies a column that says before or after noon to a clock that runs to 12. Beside a clock of 24 hours it is a witness:
 * it says the same again, or contradicts it.
 */
export function applyHalves(
  records: Records,
  from: number,
  index: number,
  clocks: TimeCells,
  days: TimeCells = clocks,
): HalfVerdict {
  const n = clocks.shape.length;
  const half = new Uint8Array(n);
  let [missing, beyond, against, all] = [0, 0, 0, 0];
  for (let k = 0; k < n; k++) {
    // A sum below the table has no date, whatever its number looks like.
    if (days.flags[k] === NOT_A_TIME) continue;
    if (clocks.shape[k] !== SHAPE.stamp && clocks.shape[k] !== SHAPE.clock) continue;
    all++;
    half[k] = halfOf(cellText(records, from + k, index));
    const hours = clocks.ms[k]! / 3_600_000;
    if (hours >= 13) beyond++;
    if (half[k] === 0) missing++;
    else if (hours < 12 !== (half[k] === 1)) against++;
  }
  if (all === 0) return 'witness';
  if (beyond > 0) return against > 0 ? 'contradicts' : 'witness';
  if (missing > 0) return 'gaps';
  for (let k = 0; k < n; k++) {
    if (half[k] === 0) continue;
    clocks.ms[k] = (clocks.ms[k]! % HALF) + (half[k] === 2 ? HALF : 0);
    clocks.flags[k]! |= CLOCK_FLAGS.halfGiven;
  }
  clocks.halfLost = false;
  return 'applied';
}

/** Applies the halves to the one column of clock times that runs to 12, where there is one alone. */
export function halvesOfOne(
  records: Records,
  from: number,
  index: number,
  cells: readonly TimeCells[],
): HalfVerdict | undefined {
  const lost = cells.filter(({ halfLost }) => halfLost);
  if (lost.length !== 1) return undefined;
  const days = cells.find((one) => lost[0]!.counts[SHAPE.stamp] === 0 && one.counts[SHAPE.day]! > 0);
  return applyHalves(records, from, index, lost[0]!, days);
}

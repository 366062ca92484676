import type { Column } from '../table/header.ts';
import { SHAPE } from '../times/stamp.ts';
import type { TimeCells } from '../times/timeColumn.ts';
import { distanceOf, ownClock, standing } from './clocks.ts';

export interface OneClock {
  cells: TimeCells[];
  witnesses: { witness: TimeCells; of: TimeCells }[];
  /** Clocks whose distance from world time another column tells, once their halves are mended. */
  distances: { own: TimeCells; world: TimeCells }[];
}

export interface TwoClocks {
  a: TimeCells;
  b: TimeCells;
  minutes: number;
  row: number;
}

/** A clock as it is compared, and the columns it stands in: a date and a time of day beside it are one clock. */
interface Clock {
  whole: TimeCells;
  parts: TimeCells[];
}

/** Of several columns that each hold whole times, or clock times, the one the person lived by. */
export function oneClock(
  cells: TimeCells[],
  glucose: boolean,
  strange: readonly Column[],
): OneClock | { ask: TwoClocks } {
  const witnesses: OneClock['witnesses'] = [];
  const distances: OneClock['distances'] = [];
  let left = cells;
  for (const shape of [SHAPE.stamp, SHAPE.clock]) {
    const rivals = rivalsOf(left, shape);
    let best = rivals[0];
    for (const other of rivals.slice(1)) {
      const distance = distanceOf(best!.whole, other.whole);
      const unknown = [best!, other].find(({ whole }) => strange.includes(whole.column));
      if (!distance || (distance.is === 'unlike' && (unknown || other.parts.length > 1))) continue;
      let own: Clock | undefined = best;
      if (distance.is !== 'same') {
        const whole = ownClock(best!.whole, other.whole);
        own = [best!, other].find((one) => one.whole === whole);
        // Beside world time a column that nobody knows may be any clock: it is the wearer's only where it says so.
        if (own && own === unknown && standing(own.whole) <= 0) own = undefined;
        if (!own && (glucose || distance.is === 'shifted'))
          return { ask: { a: best!.whole, b: other.whole, ...distance } };
        own ??= best;
      }
      const second = own === best ? other : best!;
      if (distance.is === 'shifted') distances.push({ own: own!.whole, world: second.whole });
      for (const witness of second.parts) witnesses.push({ witness, of: own!.whole });
      left = left.filter((one) => !second.parts.includes(one));
      best = own;
    }
  }
  // One that nobody knows counts only where another column showed that it is the wearer's.
  const shown = new Set(witnesses.map(({ of }) => of));
  return { cells: left.filter((one) => !strange.includes(one.column) || shown.has(one)), witnesses, distances };
}

/** Columns of one shape, each filled in half as many rows as the fullest; and beside whole times a date with a time of day. */
function rivalsOf(cells: TimeCells[], shape: number): Clock[] {
  const most = Math.max(0, ...cells.map(({ counts }) => counts[shape]!));
  const filled = (one: TimeCells) => one.counts[shape]! > 0 && one.counts[shape]! * 2 >= most;
  const rivals = cells.filter(filled).map((whole): Clock => ({ whole, parts: [whole] }));
  if (shape !== SHAPE.stamp || most === 0) return rivals;
  const columnsOf = (of: number) => cells.filter(({ counts }) => counts[of]! > 0 && counts[of]! > counts[SHAPE.stamp]!);
  const full = (of: number) => columnsOf(of).find(({ counts }) => counts[of]! * 2 >= most);
  const clock = full(SHAPE.clock);
  const day = full(SHAPE.day) ?? (clock && columnsOf(SHAPE.day).find((one) => isCarried(one, clock)));
  return day && clock ? [...rivals, { whole: joined(day, clock), parts: [day, clock] }] : rivals;
}

/**
 * A date and a time of day as one clock; a date that stands only where it changes goes on below. What is learnt of its offsets is the
 * time of day's.
 */
function joined(day: TimeCells, clock: TimeCells): TimeCells {
  const shape = new Uint8Array(day.shape.length);
  const date = new Int32Array(shape.length);
  const open = new Uint8Array(shape.length);
  let above = -1;
  for (let k = 0; k < shape.length; k++) {
    if (day.shape[k] === SHAPE.day) above = k;
    else if (!isEmpty(day, k)) above = -1;
    if (above < 0) continue;
    date[k] = day.date[above]!;
    open[k] = day.open[above]!;
    if (clock.shape[k] === SHAPE.clock) shape[k] = SHAPE.stamp;
  }
  return { ...clock, column: standing(day) === 0 ? clock.column : day.column, date, open, shape };
}

const isEmpty = ({ shape, flags }: TimeCells, k: number): boolean => shape[k] === SHAPE.none && flags[k] === 0;

/** Dates and nothing else, the first beside the first of the clock times: one of a day, carried down. */
function isCarried(day: TimeCells, clock: TimeCells): boolean {
  const first = clock.shape.indexOf(SHAPE.clock);
  return (
    first >= 0 && day.shape[first] === SHAPE.day && day.shape.every((of, k) => of === SHAPE.day || isEmpty(day, k))
  );
}

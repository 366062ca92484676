import { DAY_MS } from '../../time/calendar.ts';
import type { Reading } from '../reading.ts';
import type { Column } from '../table/header.ts';
import { SHAPE } from './stamp.ts';
import type { TimeCells, TimePlan } from './timeColumn.ts';
import type { Walls } from './wall.ts';

/** How a table with a date on the first row of a day ended. */
export interface DayAbove {
  /** What its columns mean: only a header repeated goes on with its day. */
  columns: string;
  day: number;
  /** Time of day of its last row, and whether its times rose. */
  clock: number;
  rising: boolean;
}

const meaningOf = (columns: Column[]): string => columns.flatMap(({ role }) => (role === 'ignore' ? [] : role)).join();

/** Keeps how a table ended, for the one below it. */
export function keepDay(reading: Reading, plan: TimePlan, { wall, lastDay }: Walls, columns: Column[]): void {
  delete reading.dayAbove;
  if (plan.kind !== 'two' || Number.isNaN(lastDay)) return;
  const at = timedBefore(wall, wall.length);
  if (at < 0) return;
  const last = wall[at]!;
  const before = timedBefore(wall, at);
  const rising = before < 0 || last >= wall[before]!;
  reading.dayAbove = { columns: meaningOf(columns), day: lastDay, clock: last % DAY_MS, rising };
}

/** The last row before another that has a time; -1 for none. */
function timedBefore(wall: Float64Array, row: number): number {
  let k = row - 1;
  while (k >= 0 && Number.isNaN(wall[k]!)) k--;
  return k;
}

/** The day that clock times without a date go on with: the one above a repeated header, where these go on as well. */
export function dayAbove({ dayAbove: above }: Reading, clock: TimeCells, columns: Column[]): number | undefined {
  const k = clock.shape.indexOf(SHAPE.clock);
  if (!above || k < 0 || above.columns !== meaningOf(columns)) return undefined;
  const ms = clock.ms[k]!;
  return (above.rising ? ms >= above.clock : ms <= above.clock) ? above.day : undefined;
}

/** Clock times whose column of dates is empty to the end, under a repeated header. */
export function carriedOn(reading: Reading, cells: TimeCells[], columns: Column[]): TimePlan | undefined {
  const clock = cells.find(({ counts }) => counts[SHAPE.clock]! > 0);
  const day = cells.find(({ column, flags }) => column.role === 'date' && flags.every((flag) => flag === 0));
  if (!clock || !day || dayAbove(reading, clock, columns) === undefined) return undefined;
  return { kind: 'two', day, clock };
}

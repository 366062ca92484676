import type { Choice } from '../../model/input.ts';
import { NO_OFFSET } from '../../time/offset.ts';
import type { Column } from '../table/header.ts';
import { locate, type Records } from '../table/records.ts';
import { CLOCK_FLAGS } from './clockCell.ts';
import { readStamp } from './dates.ts';
import { newStamp, SHAPE } from './stamp.ts';

/** One column of time cells over the rows of a table, parsed and not yet settled. */
export interface TimeCells {
  column: Column;
  shape: Uint8Array;
  /** 1 = the order of the date's parts is open; 2 = and its year has two digits. */
  open: Uint8Array;
  date: Int32Array;
  /** Dates that are none as they stand and one with day and month turned: that one, by row. */
  yearDays: Map<number, number>;
  ms: Float64Array;
  offset: Int16Array;
  flags: Uint8Array;
  /** Rows of each shape, by SHAPE. */
  counts: number[];
  /** A zone named in brackets behind an offset, if any. */
  zone: string;
  /** Whether every clock reading lay between 1:00 and 12:59 without a word for its half. */
  halfLost: boolean;
}

/** A cell that holds something other than a time. Empty cells have the shape 0 and the flag 0. */
export const NOT_A_TIME = 128;

/** Parses a column for the rows `from` to `to` (half open). */
export function readTimeCells(records: Records, from: number, to: number, column: Column): TimeCells {
  const n = to - from;
  const cells: TimeCells = {
    column,
    shape: new Uint8Array(n),
    open: new Uint8Array(n),
    date: new Int32Array(n),
    yearDays: new Map(),
    ms: new Float64Array(n),
    offset: new Int16Array(n),
    flags: new Uint8Array(n),
    counts: [0, 0, 0, 0, 0, 0, 0],
    zone: '',
    halfLost: false,
  };
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const { shape, open, date, ms, offset, flags, counts } = cells;
  const bytes = records.bytes;
  // A number in a sum below may look like a clock time: halves are told by cells of the usual shape.
  const within12 = [0, 0, 0, 0, 0, 0, 0];
  for (let k = 0; k < n; k++) {
    offset[k] = NO_OFFSET;
    if (!locate(records, from + k, column.index, span)) continue;
    const found = readStamp(bytes, span.from, span.to, stamp);
    counts[found]!++;
    if (found === SHAPE.none) {
      flags[k] = NOT_A_TIME;
      continue;
    }
    shape[k] = found;
    open[k] = stamp.open ? (stamp.shortYear ? 2 : 1) : 0;
    date[k] = stamp.date;
    if (stamp.yearDay !== 0) cells.yearDays.set(k, stamp.yearDay);
    ms[k] = stamp.ms;
    offset[k] = column.offset !== undefined && stamp.offset === NO_OFFSET ? column.offset : stamp.offset;
    flags[k] = stamp.flags;
    if (stamp.zone !== '' && cells.zone === '') cells.zone = stamp.zone;
    if (stamp.hour >= 1 && stamp.hour <= 12 && !(stamp.flags & CLOCK_FLAGS.halfGiven)) within12[found]!++;
  }
  const usual = clockShape(cells);
  cells.halfLost = counts[usual]! > 0 && within12[usual] === counts[usual];
  return cells;
}

/** The shape of most cells that tell a time of day. */
export const clockShape = ({ counts }: Pick<TimeCells, 'counts'>): number =>
  counts[SHAPE.stamp]! >= counts[SHAPE.clock]! ? SHAPE.stamp : SHAPE.clock;

/** Which columns tell the time of a row. */
export type TimePlan =
  | { kind: 'one'; cells: TimeCells }
  | { kind: 'two'; day: TimeCells; clock: TimeCells }
  /** Dates without any clock time. */
  | { kind: 'days'; day: TimeCells }
  | { kind: 'seconds' | 'millis' | 'serial'; cells: TimeCells };

/** Chooses by content: whole time stamps, else a date beside a clock, else epochs or serials, else dates alone. */
export function planTimes(columns: TimeCells[]): TimePlan | undefined {
  const most = (shape: number): TimeCells | undefined => {
    let best: TimeCells | undefined;
    for (const cells of columns) if (cells.counts[shape]! > (best?.counts[shape] ?? 0)) best = cells;
    return best;
  };
  const stamps = most(SHAPE.stamp);
  const days = most(SHAPE.day);
  const clocks = most(SHAPE.clock);
  const dayCount = days?.counts[SHAPE.day] ?? 0;
  if (stamps && stamps.counts[SHAPE.stamp]! * 2 >= dayCount) return { kind: 'one', cells: stamps };
  if (days && clocks && days !== clocks) return { kind: 'two', day: days, clock: clocks };
  if (stamps) return { kind: 'one', cells: stamps };
  if (days) return { kind: 'days', day: days };
  const seconds = most(SHAPE.seconds);
  if (seconds) return { kind: 'seconds', cells: seconds };
  const millis = most(SHAPE.millis);
  if (millis) return { kind: 'millis', cells: millis };
  const serial = most(SHAPE.serial);
  if (serial) return { kind: 'serial', cells: serial };
  return undefined;
}

/** How the plan is told among the choices. */
export function planChoice(plan: TimePlan): Choice {
  const by = 'file';
  if (plan.kind === 'two') {
    const evidence = { is: 'both-named', name: plan.day.column.name, other: plan.clock.column.name } as const;
    return { id: 'clock', value: 'two-columns', by, evidence };
  }
  const { name } = (plan.kind === 'days' ? plan.day : plan.cells).column;
  const value = plan.kind === 'one' ? 'one-column' : plan.kind === 'days' ? 'dates-only' : plan.kind;
  return { id: 'clock', value, by, evidence: { is: 'named', name } };
}

import type { DateOrder } from '../../model/detail.ts';
import type { Choice, ReadSettings } from '../../model/input.ts';
import { DAY_MS } from '../../time/calendar.ts';
import { NO_OFFSET } from '../../time/offset.ts';
import type { IssueBook } from '../book.ts';
import { CLOCK_FLAGS } from './clockCell.ts';
import { type OrderHint, orderOf } from './columnOrder.ts';
import { dayNumber, FIRST_YEAR, openDay } from './dayOrder.ts';
import { mendDates } from './mendDates.ts';
import { serialBase } from './serialDates.ts';
import { SHAPE } from './stamp.ts';
import { NOT_A_TIME, type TimeCells, type TimePlan } from './timeColumn.ts';
import type { DaySpan } from './yearDays.ts';

const FIRST_DAY = dayNumber(FIRST_YEAR, 1, 1);
const RESET_DAY = dayNumber(2000, 1, 1);

/** Why a row has no usable time. */
export const TIME_FAULT = { none: 0, empty: 1, unreadable: 2, impossible: 3, early: 4, future: 5 } as const;

/** The settled time of every row of a table. */
export interface Walls {
  /** Wall clock in ms as if it were UTC; NaN where `fault` says why. */
  wall: Float64Array;
  offset: Int16Array;
  fault: Uint8Array;
  /** False when the table has dates only. */
  timed: boolean;
  /** Rows of a timed table that hold a date alone; 1 = so. */
  dateOnly: Uint8Array;
  /** Rows whose date was carried down from the row above. */
  carried: number;
  /** The last day written; NaN without any. Rows under a repeated header go on from it. */
  lastDay: number;
  /** Its dates put the day between year and month. */
  yearDays: boolean;
  order?: DateOrder;
}

/**
 * Settles the date order of the table and computes every row's wall clock. A refusal goes into the book and leaves
 * the readings of both orders there.
 */
export function settleWalls(
  plan: TimePlan,
  lineOf: (k: number) => number,
  settings: { today: string; dateOrder?: ReadSettings['dateOrder']; serialDates?: 1900 | 1904; yearDays?: DaySpan },
  hint: OrderHint | undefined,
  book: IssueBook,
  choices: Choice[],
  dayAbove = Number.NaN,
): Walls | undefined {
  const dates = plan.kind === 'two' || plan.kind === 'days' ? plan.day : plan.cells;
  const n = dates.shape.length;
  const lastDay = Math.floor(Date.parse(`${settings.today}T00:00:00Z`) / DAY_MS) + 1;
  const walls: Walls = {
    wall: new Float64Array(n).fill(Number.NaN),
    offset: new Int16Array(n).fill(NO_OFFSET),
    fault: new Uint8Array(n),
    timed: plan.kind !== 'days',
    dateOnly: new Uint8Array(n),
    carried: 0,
    lastDay: dayAbove,
    yearDays: false,
  };
  if (plan.kind === 'seconds' || plan.kind === 'millis' || plan.kind === 'serial') {
    if (!fillNumbers(plan.kind, dates, walls, lineOf, settings.serialDates, lastDay, book, choices)) return undefined;
  } else {
    if (!mendDates(plan, dates, lineOf, book, walls, settings.yearDays)) return undefined;
    const settled = orderOf(dates, lineOf, settings.dateOrder, hint, lastDay, book, choices);
    if (settled === null) return undefined;
    if (settled) walls.order = settled;
    fillDates(plan, settled ?? 'day-first', walls);
  }
  limitSpan(walls, lastDay);
  if (walls.timed && onlyMidnights(walls.wall)) {
    walls.timed = false;
    walls.dateOnly.fill(1);
    choices.push({ id: 'clock', value: 'dates-only', by: 'file', evidence: { is: 'every-midnight' } });
  }
  return walls;
}

function fillDates(plan: TimePlan, order: DateOrder, walls: Walls): void {
  if (plan.kind !== 'one' && plan.kind !== 'two' && plan.kind !== 'days') return;
  const dates = plan.kind === 'one' ? plan.cells : plan.day;
  const clocks = plan.kind === 'two' ? plan.clock : dates;
  const { wall, offset, fault } = walls;
  const { shape, open, date } = dates;
  let lastCode = -1;
  let lastOpen = -1;
  let lastValue = Number.NaN;
  let above = walls.lastDay;
  for (let k = 0; k < wall.length; k++) {
    let day = Number.NaN;
    const s = shape[k]!;
    if (s === SHAPE.stamp || s === SHAPE.day) {
      const code = date[k]!;
      if (code !== lastCode || open[k] !== lastOpen) {
        lastCode = code;
        lastOpen = open[k]!;
        lastValue = lastOpen ? openDay(code, order) : dayNumber(code >>> 9, (code >>> 5) & 15, code & 31);
      }
      day = lastValue;
      if (Number.isNaN(day)) {
        fault[k] = TIME_FAULT.impossible;
        above = Number.NaN;
        continue;
      }
      above = day;
    } else if (plan.kind === 'two' && dates.flags[k] === 0 && clocks.shape[k] === SHAPE.clock && !Number.isNaN(above)) {
      day = above;
      walls.carried++;
    } else {
      fault[k] = dates.flags[k] === NOT_A_TIME || s !== SHAPE.none ? TIME_FAULT.unreadable : TIME_FAULT.empty;
      continue;
    }
    let from: TimeCells | undefined;
    if (s === SHAPE.stamp) from = dates;
    else if (plan.kind === 'two') {
      if (clocks.flags[k] === NOT_A_TIME || (clocks.shape[k] !== SHAPE.clock && clocks.shape[k] !== SHAPE.none)) {
        fault[k] = TIME_FAULT.unreadable;
        continue;
      }
      if (clocks.shape[k] === SHAPE.clock) from = clocks;
    }
    // A date alone among time stamps: a note of that day, and no time for a reading.
    if (!from) walls.dateOnly[k] = 1;
    else if (from.flags[k]! & CLOCK_FLAGS.impossible) {
      fault[k] = TIME_FAULT.impossible;
      continue;
    }
    wall[k] = day * DAY_MS + (from ? from.ms[k]! : 0);
    offset[k] = from ? from.offset[k]! : NO_OFFSET;
  }
  walls.lastDay = above;
}

/** Epochs are instants in UTC; serial numbers are days as spreadsheets count. */
function fillNumbers(
  kind: 'seconds' | 'millis' | 'serial',
  cells: TimeCells,
  walls: Walls,
  lineOf: (k: number) => number,
  serialDates: 1900 | 1904 | undefined,
  lastDay: number,
  book: IssueBook,
  choices: Choice[],
): boolean {
  const shape = SHAPE[kind];
  const base = kind === 'serial' ? serialBase(cells, lineOf, serialDates, lastDay, book, choices) : 0;
  if (base === undefined) return false;
  for (let k = 0; k < cells.ms.length; k++) {
    if (cells.shape[k] !== shape) {
      walls.fault[k] = cells.flags[k] === 0 && cells.shape[k] === SHAPE.none ? TIME_FAULT.empty : TIME_FAULT.unreadable;
      continue;
    }
    const value = cells.ms[k]!;
    if (kind === 'serial') walls.wall[k] = base * DAY_MS + Math.round(value * 86400) * 1000;
    else {
      walls.wall[k] = kind === 'seconds' ? Math.round(value * 1000) : value;
      walls.offset[k] = 0;
    }
  }
  return true;
}

/** Midnight in every one of several rows means that no times were written. */
function onlyMidnights(wall: Float64Array): boolean {
  let n = 0;
  for (const t of wall) {
    if (Number.isNaN(t)) continue;
    if (t % DAY_MS !== 0) return false;
    n++;
  }
  return n >= 3;
}

/** Dates before there were sensors, at a clock's reset day, or after tomorrow are clock faults. */
function limitSpan(walls: Walls, lastDay: number): void {
  const { wall, fault } = walls;
  const low = FIRST_DAY * DAY_MS;
  const high = (lastDay + 1) * DAY_MS;
  const reset = RESET_DAY * DAY_MS;
  for (let k = 0; k < wall.length; k++) {
    const t = wall[k]!;
    if (t >= low && t < high && !(t >= reset && t < reset + DAY_MS)) continue;
    if (Number.isNaN(t)) continue;
    fault[k] = t >= high ? TIME_FAULT.future : TIME_FAULT.early;
    wall[k] = Number.NaN;
  }
}

import type { TableLayout } from '../../schemas/layout.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../time/calendar.ts';
import { NO_OFFSET, offsetText } from '../../time/offset.ts';
import type { Claimed } from '../evidence/claim.ts';
import { offsetsFrom } from '../evidence/clocks.ts';
import { applyHalves, halvesOfOne } from '../evidence/halves.ts';
import { oneClock, type TwoClocks } from '../evidence/oneClock.ts';
import { askClocks, askHalf } from '../evidence/questions.ts';
import type { Reading } from '../reading.ts';
import { CLOCK_FLAGS } from '../times/clockCell.ts';
import { carriedOn } from '../times/dayAbove.ts';
import { bothHalves, mendHalves } from '../times/halfDay.ts';
import { serialBase } from '../times/serialDates.ts';
import { mendSheetTimes } from '../times/sheetTimes.ts';
import { SHAPE } from '../times/stamp.ts';
import {
  NOT_A_TIME,
  planChoice,
  planTimes,
  readTimeCells,
  type TimeCells,
  type TimePlan,
} from '../times/timeColumn.ts';
import { wholeSerials } from '../times/wholeSerials.ts';
import { type DaySpan, mendYearDays } from '../times/yearDays.ts';
import type { Column } from './header.ts';
import { cellText, type Records } from './records.ts';
import type { Table } from './tables.ts';
import { conceptsOf, tokens } from './vocabulary.ts';

const WHEN = ['time', 'date', 'clock'];
/** Columns of times that are looked at; no table needs more. */
const MOST = 6;

export interface TableTimes {
  plan: TimePlan;
  /** The cells that hold the time of day. */
  clock: TimeCells;
}

/** Settles which columns tell the time of each row, and on whose clock. `none`: no row has a time. Undefined after a refusal. */
export function tableTimes(
  reading: Reading,
  table: Table,
  { columns, accounts, profiles }: Claimed,
  layout: TableLayout | undefined,
): TableTimes | 'none' | undefined {
  const { records, book, choices } = reading;
  const lineOf = (k: number): number => records.line[table.from + k]!;
  const whens = columns.filter(({ role }) => WHEN.includes(role)).slice(0, MOST);
  // Times under a name that nobody knows may be the wearer's clock as well as any.
  const strange = columns.filter(
    ({ role, given, name }, i) =>
      role === 'ignore' && !given && profiles[i]!.kind === 'time' && conceptsOf(tokens(name)).size === 0,
  );
  const cells = [...whens, ...strange.slice(0, 2)].map((column) =>
    readTimeCells(records, table.from, table.to, column),
  );
  const lastDay = Math.floor(Date.parse(`${reading.settings.today}T00:00:00Z`) / DAY_MS) + 1;
  const dayZero = (days: TimeCells) => serialBase(days, lineOf, layout?.serialDates, lastDay, book, choices);
  if (!mendSheetTimes(records, table.from, cells, dayZero)) return undefined;
  if (table.header >= 0) wholeSerials(cells, layout?.serialDates);
  // Clocks are compared once their dates are what they mean.
  if (cells.length > 1) turnYearDays(cells, reading.yearDays ?? reading.hints.yearDays);
  const glucose = columns.some(({ role }) => role === 'glucose' || role === 'sensor' || role === 'value');
  const half = columns.find(({ role }) => role === 'half');
  // A clock that runs to 12 is compared with another one only once its halves are known.
  const early = half && halvesOfOne(records, table.from, half.index, cells);
  const unlike = table.header < 0 ? clocksUnlike(cells) : undefined;
  if (unlike) {
    askClocks(book, unlike, records, table);
    return undefined;
  }
  const chosen = oneClock(cells, glucose, strange);
  if ('ask' in chosen) {
    askClocks(book, halvesFirst(chosen.ask), records, table);
    return undefined;
  }
  for (const { witness, of } of chosen.witnesses)
    accounts.set(witness.column.index, { why: 'witness', evidence: of.column.name });
  const plan = planTimes(chosen.cells) ?? carriedOn(reading, chosen.cells, columns);
  if (!plan) {
    const sample = whens[0] ? firstText(records, table, whens[0]) : '';
    if (sample === '') return 'none';
    const line = table.from < records.count ? lineOf(0) : 0;
    const clocks = chosen.cells.some(({ counts }) => counts[SHAPE.clock]! > 0);
    // Columns without names may still be told by whoever knows them.
    if (clocks && table.header >= 0) book.add('days-not-said', 'refusal', line, { actual: sample });
    else
      book.add('times-unreadable', 'refusal', line, {
        actual: sample,
        question: { of: 'layout', field: 'columns' },
      });
    return undefined;
  }
  choices.push(planChoice(plan));
  const clock = plan.kind === 'two' ? plan.clock : plan.kind === 'days' ? plan.day : plan.cells;
  for (const column of columns) {
    if (column.role !== 'world') continue;
    offsetsFrom(clock, readTimeCells(records, table.from, table.to, column));
  }
  const { offset } = reading.above;
  if (offset && clock.offset.every((minutes) => minutes === NO_OFFSET)) {
    clock.offset.fill(offset.minutes);
    choices.push({
      id: 'offset',
      value: offsetText(offset.minutes * MINUTE_MS),
      by: 'file',
      evidence: { is: 'at-line', text: offset.text, line: offset.line },
    });
  }
  if (half) {
    const verdict =
      early ?? applyHalves(records, table.from, half.index, clock, plan.kind === 'two' ? plan.day : clock);
    if (verdict === 'gaps' || verdict === 'contradicts') {
      askHalf(book, half, clock, lineOf(0));
      return undefined;
    }
    if (verdict === 'applied')
      choices.push({
        id: 'half-of-day',
        value: 'named-column',
        by: 'file',
        evidence: { is: 'named', name: half.name },
      });
    else accounts.set(half.index, { why: 'witness', evidence: clock.column.name });
  }
  if (plan.kind === 'two') clock.halfLost = within12(clock, plan.day);
  const dates = plan.kind === 'two' ? plan.day.date : clock.date;
  const halves = layout?.clock || half ? 'none' : mendHalves(clock, dates);
  if (halves === 'untold') {
    const both = bothHalves(clock, lineOf);
    book.add('clock-half-lost', 'refusal', lineOf(0), {
      actual: clock.column.name,
      expected: both,
      question: { of: 'layout', field: 'clock', answer: JSON.stringify({ clock: '24-hour' }) },
    });
    return undefined;
  }
  if (halves === 'mended')
    choices.push({
      id: 'half-of-day',
      value: 'row-order',
      by: 'file',
      evidence: { is: 'named', name: clock.column.name },
    });
  for (const { own, world } of chosen.distances) offsetsFrom(own, world);
  return { plan, clock };
}

function turnYearDays(cells: readonly TimeCells[], known: DaySpan | undefined): void {
  const clock = cells.find(({ counts }) => counts[SHAPE.clock]! > counts[SHAPE.stamp]!);
  for (const one of cells) {
    if (one.counts[SHAPE.stamp]! > one.counts[SHAPE.day]!) mendYearDays(one, one, known);
    else if (one.counts[SHAPE.day]! > 0) mendYearDays(one, clock ?? one, known);
  }
}

/** A column of halves of the day stands beside the clock it belongs to: of two that one is asked for first. */
const halvesFirst = (ask: TwoClocks): TwoClocks =>
  ask.b.flags.some((flags) => flags & CLOCK_FLAGS.halfGiven) ? { ...ask, a: ask.b, b: ask.a } : ask;

/** Without names, two columns of whole times in forms that are not compared: one of them may be when the rows were sent. */
function clocksUnlike(cells: TimeCells[]): { a: TimeCells; b: TimeCells; minutes: number; row: number } | undefined {
  const of = (shapes: number[]): TimeCells | undefined =>
    cells.find(({ counts, column }) => !column.given && shapes.some((shape) => counts[shape]! > 0));
  const [a, b] = [of([SHAPE.stamp]), of([SHAPE.serial, SHAPE.seconds, SHAPE.millis])];
  if (!a || !b || a === b) return undefined;
  const row = a.shape.findIndex((shape, k) => shape !== SHAPE.none && b.shape[k] !== SHAPE.none);
  return row < 0 ? undefined : { a, b, minutes: Number.NaN, row };
}

/** Whether every clock time beside a date lies between 1:00 and 12:59 without a half of its own; a sum below the table has no date. */
function within12({ shape, ms, flags }: TimeCells, days: TimeCells): boolean {
  let clocks = 0;
  for (let k = 0; k < shape.length; k++) {
    if (shape[k] !== SHAPE.clock || days.flags[k] === NOT_A_TIME) continue;
    clocks++;
    const hours = ms[k]! / HOUR_MS;
    if (hours < 1 || hours >= 13 || flags[k]! & CLOCK_FLAGS.halfGiven) return false;
  }
  return clocks > 0;
}

export function firstText(records: Records, table: Table, column: Column): string {
  for (let r = table.from; r < table.to; r++) {
    const text = cellText(records, r, column.index);
    if (text !== '') return text;
  }
  return '';
}

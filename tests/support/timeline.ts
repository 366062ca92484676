import type { GlucoseUnit, LocalDate } from '../../src/model/glucose.ts';
import type { NoteEntry, NoteKind, ReadFile, ReadingColumns, RowFate } from '../../src/model/input.ts';
import type { PeriodChoice } from '../../src/model/settings.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { addDays, DAY_MS, dateOf, MINUTE_MS, midnightOf } from '../../src/time/calendar.ts';
import { NO_OFFSET } from '../../src/time/offset.ts';
import { buildTimeline } from '../../src/timeline/index.ts';

/** One reading as a file would hold it. `wall` in ms as if UTC. */
export interface Row {
  wall: number;
  native: number;
  unit?: GlucoseUnit;
  limit?: -1 | 0 | 1;
  offset?: number;
}

/** A note on a day counted from 0; without `minute` a note of that day. */
export type NoteOn = { day: number; minute?: number; kind: NoteKind } & Partial<
  Pick<NoteEntry, 'amount' | 'unit' | 'label' | 'minutes' | 'text'>
>;

export interface DaysOf {
  /** First day, default 2026-03-02 (a Monday). */
  from?: string;
  /** Default 14. */
  days?: number;
  /** Minutes between readings, default 5. */
  every?: number;
  /** Default mg/dL. */
  unit?: GlucoseUnit;
  /** The value in `unit`, a reading with a limit, or null for no reading. */
  value: (minuteOfDay: number, dayIndex: number) => number | { native: number; limit: -1 | 1 } | null;
  /** Pauses: minutes `[from, to)` of a day, or of every day. */
  without?: { day?: number; from: number; to: number }[];
  notes?: NoteOn[];
  /** IANA zone to place the wall clock in; default as written. */
  zone?: string;
  /** Default: exactly the days built. */
  period?: PeriodChoice;
}

/** A file from rows, in the order given. */
export function fileOf(rows: Row[], notes: NoteOn[] = [], from = '2026-03-02', name = 'made.csv'): ReadFile {
  const count = rows.length;
  const readings: ReadingColumns = {
    count,
    wall: Float64Array.from(rows, ({ wall }) => wall),
    offset: Int16Array.from(rows, ({ offset }) => offset ?? NO_OFFSET),
    native: Float64Array.from(rows, ({ native }) => native),
    unit: Uint8Array.from(rows, ({ unit }) => (unit === 'mmol/L' ? 1 : 0)),
    limit: Int8Array.from(rows, ({ limit }) => limit ?? 0),
    line: Int32Array.from(rows, (_, i) => i + 2),
    row: Int32Array.from(rows, (_, i) => i),
  };
  const entries = notes.map((note, n) => entryOf(note, from, name, count + n));
  const fates: RowFate[] = [...rows.map(() => 'used' as const), ...notes.map(() => 'note' as const)];
  const nothing = { choices: [], issues: [], faults: [], persons: [] };
  return { name, kind: 'delimited', hash: '', ...nothing, readings, notes: entries, fates };
}

/** Rows of whole days. */
export function rowsOf({
  from = '2026-03-02',
  days = 14,
  every = 5,
  unit = 'mg/dL',
  value,
  without = [],
}: DaysOf): Row[] {
  const rows: Row[] = [];
  for (let day = 0; day < days; day++) {
    const midnight = midnightOf(from) + day * DAY_MS;
    for (let minute = 0; minute < 1440; minute += every) {
      if (without.some((gap) => (gap.day ?? day) === day && minute >= gap.from && minute < gap.to)) continue;
      const level = value(minute, day);
      if (level === null) continue;
      const plain = typeof level === 'number' ? { native: level } : level;
      rows.push({ wall: midnight + minute * MINUTE_MS, unit, ...plain });
    }
  }
  return rows;
}

/** A timeline of made-up days through the real intake. @throws when the intake refuses. */
export function timelineOf(days: DaysOf): Timeline {
  const { from = '2026-03-02', days: count = 14, notes, zone } = days;
  const period = days.period ?? { from, to: addDays(from, count - 1) };
  return built([fileOf(rowsOf(days), notes, from)], { period, ...(zone === undefined ? {} : { zone }) });
}

/** The timeline of some files. @throws when the intake refuses. */
export function built(files: ReadFile[], settings: Parameters<typeof buildTimeline>[1] = {}): Timeline {
  const { timeline, issues } = buildTimeline(files, settings);
  if (!timeline) throw new Error(`refused: ${JSON.stringify(issues)}`);
  return timeline;
}

/** The date of a day counted from 0. */
export function dayOf(from: string, day: number): LocalDate {
  return dateOf(midnightOf(from) + day * DAY_MS);
}

function entryOf({ day, minute, ...note }: NoteOn, from: string, name: string, row: number): NoteEntry {
  return {
    ...note,
    wall: midnightOf(from) + day * DAY_MS + (minute ?? 0) * MINUTE_MS,
    offset: NO_OFFSET,
    timed: minute !== undefined,
    origin: { file: name, line: row + 2 },
    row,
  };
}

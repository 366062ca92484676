import type { GlucoseUnit, Instant, LocalDate } from './glucose.ts';
import type { Issue, NoteEntry } from './input.ts';

/** A calendar day of the period, whether or not it holds readings. */
export interface Day {
  date: LocalDate;
  /** 1 = Monday … 7 = Sunday. */
  weekday: number;
  /** First instant of the day. */
  start: Instant;
  /** 1440, or 1380 and 1500 on the days a clock changes. */
  minutes: number;
  /** Half-open index range into the readings. */
  from: number;
  to: number;
}

/** Readings inside the period, ascending in time, one column an array. */
export interface Readings {
  count: number;
  at: Float64Array;
  mgdl: Float64Array;
  /** As in the file, in `unit`. */
  native: Float64Array;
  /** 0 = mg/dL, 1 = mmol/L. */
  unit: Uint8Array;
  /** -1 below what the sensor reports, 0 plain, 1 above. A bound that is unknown leaves `mgdl` and `native` NaN. */
  limit: Int8Array;
  /** Index into days. */
  day: Uint16Array;
  /** Minute of the local day, 0 … 1439, as a clock on the wall would show it. */
  minute: Uint16Array;
  /**
   * Minutes each reading stands for: the spell's interval (the step where another reading follows sooner), or
   * min(step to next, 1.5 intervals) where steps are mixed. A day's sum may pass its length by up to one interval.
   */
  weight: Float64Array;
}

/** A pause longer than `Timeline.gapMinutes`, from the reading before it to the reading after it (or the period's edge). */
export interface Gap {
  from: Instant;
  to: Instant;
  minutes: number;
  /** `change`: between two sensors, where a warm-up is expected. `edge`: before the first or after the last reading. */
  kind: 'hole' | 'change' | 'edge';
}

/** A stretch worn as one sensor, as far as the data show. */
export interface Spell {
  from: Instant;
  to: Instant;
  /** Usual minutes between readings in it. */
  interval: number;
  count: number;
}

/** A note placed on the timeline. */
export interface Note extends NoteEntry {
  at: Instant;
  /** Index into days. */
  day: number;
  /** Minute of the local day; meaningless when `timed` is false. */
  minute: number;
}

/** One person's readings and notes in one order, in local days. Classify in the native unit, never after converting. */
export interface Timeline {
  /** IANA zone, or null: the local clock as written in the rows, whose offsets, if any, make `at` real instants. */
  zone: string | null;
  /** Whether `at` is an instant that others can place: by the zone or by the offsets in the rows; else a clock nobody placed. */
  placed: boolean;
  /** Native unit of most readings, and the unit people see. */
  unit: GlucoseUnit;
  /** Calendar days chosen, both included. `days` has one entry for each. */
  from: LocalDate;
  to: LocalDate;
  chosenBy: 'user' | 'default';
  days: Day[];
  readings: Readings;
  notes: Note[];
  gaps: Gap[];
  spells: Spell[];
  /** Usual minutes between readings, of the longest spell. */
  interval: number;
  /** A pause longer than this is a gap: the larger of 20 minutes and two intervals (clinical default, ours). */
  gapMinutes: number;
  /** True when steps are too uneven to count readings, so that shares are weighted by time. */
  mixed: boolean;
  /** Days in all the data given, period or not, that hold at least one reading. */
  allDays: LocalDate[];
  issues: Issue[];
}

import type { TargetSet } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { BANDS, bandBeyond, bandOf } from '../targets/bands.ts';
import { isEnough, SEEN_SHARE } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';

/** Secondary range of the consensus, both units as printed (Danne 2017). */
const TIGHT_RANGE = { 'mg/dL': [70, 140], 'mmol/L': [3.9, 7.8] } as const;

/** Readings whose value or bound is known, in order of time; all columns of one length. */
export interface Trace {
  targets: TargetSet;
  mgdl: Float64Array;
  /** Minutes since the first reading. */
  minutes: Float64Array;
  weight: Float64Array;
  /** Index into BANDS, found in the reading's own unit. */
  band: Uint8Array;
  /** Whether a calendar day is a Saturday or a Sunday. */
  weekend: boolean[];
  /** Index of the calendar day, minute of the local day. */
  day: Uint16Array;
  minuteOfDay: Uint16Array;
  /** Number of the unbroken stretch: it changes where a pause is longer than the gap rule. */
  stretch: Uint32Array;
  /** Usual minutes between readings. */
  interval: number;
  /** Calendar days of the period, and those with at least 70 % of their minutes. */
  days: number;
  fullDays: number[];
  /** Every reading, those beyond the sensor without a number included: their value is NaN, their band is known. */
  every: { mgdl: Float64Array; weight: Float64Array; band: Uint8Array; day: Uint16Array; minuteOfDay: Uint16Array };
  /** Minutes with readings, unknown bounds included, and the minutes of them in each band, in the order of BANDS. */
  seen: number;
  bands: number[];
  /** Minutes in the tight range, each reading judged in its own unit. */
  tight: number;
  /** Whether 14 days and 70 % of their time were seen (Battelino 2019). */
  enough: boolean;
}

/** What the indices look at, made once. */
export function traceOf(timeline: Timeline, targets: TargetSet): Trace {
  const { readings, days, interval, gapMinutes } = timeline;
  const kept: number[] = [];
  const each = new Uint8Array(readings.count);
  const bands = BANDS.map(() => 0);
  const perDay = days.map(() => 0);
  let tight = 0;
  for (let i = 0; i < readings.count; i++) {
    if (!Number.isNaN(readings.mgdl[i]!)) kept.push(i);
    const unit = readings.unit[i] === 0 ? 'mg/dL' : 'mmol/L';
    const limits = targets.limits[unit];
    const side = readings.limit[i]!;
    const native = readings.native[i]!;
    const band = side === 0 ? bandOf(native, limits) : bandBeyond(side < 0 ? -1 : 1, native, limits);
    each[i] = band;
    bands[band] = bands[band]! + readings.weight[i]!;
    if (side === 0 && native >= TIGHT_RANGE[unit][0] && native <= TIGHT_RANGE[unit][1]) tight += readings.weight[i]!;
    perDay[readings.day[i]!] = perDay[readings.day[i]!]! + readings.weight[i]!;
  }
  const first = readings.at[kept[0] ?? 0] ?? 0;
  const column = (of: Float64Array | Uint16Array) => kept.map((i) => of[i]!);
  const minutes = Float64Array.from(kept, (i) => (readings.at[i]! - first) / MINUTE_MS);
  const seen = bands.reduce((sum, part) => sum + part, 0);
  return {
    targets,
    mgdl: Float64Array.from(column(readings.mgdl)),
    minutes,
    weight: Float64Array.from(column(readings.weight)),
    band: Uint8Array.from(kept, (i) => each[i]!),
    weekend: days.map(({ weekday }) => weekday > 5),
    day: Uint16Array.from(column(readings.day)),
    minuteOfDay: Uint16Array.from(column(readings.minute)),
    stretch: stretches(minutes, gapMinutes),
    interval,
    days: days.length,
    fullDays: days.flatMap((day, d) => (perDay[d]! >= SEEN_SHARE * day.minutes ? [d] : [])),
    every: {
      mgdl: readings.mgdl,
      weight: readings.weight,
      band: each,
      day: readings.day,
      minuteOfDay: readings.minute,
    },
    seen,
    bands,
    tight,
    enough: isEnough(days.length, seen / days.reduce((sum, day) => sum + day.minutes, 0)),
  };
}

/** The values of each full day. */
export function fullDayValues({ mgdl, day, fullDays }: Trace): number[][] {
  return fullDays.map((full) => Array.from(mgdl.filter((_, i) => day[i] === full)));
}

function stretches(minutes: Float64Array, gapMinutes: number): Uint32Array {
  const stretch = new Uint32Array(minutes.length);
  for (let i = 1; i < minutes.length; i++) {
    stretch[i] = stretch[i - 1]! + (minutes[i]! - minutes[i - 1]! > gapMinutes ? 1 : 0);
  }
  return stretch;
}

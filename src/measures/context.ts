import type { Comparison } from '../comparing/thenAndNow.ts';
import type { LocalDate, MgPerDl } from '../model/glucose.ts';
import type { LogWords } from '../model/logbook.ts';
import type { PregnancyGoals } from '../model/settings.ts';
import type { Limits, TargetSet } from '../model/targets.ts';
import type { ComparedWith, PeriodSums } from '../model/thenAndNow.ts';
import type { Readings, Timeline } from '../model/timeline.ts';
import type { Medicine } from '../model/trust.ts';
import type { Visit } from '../model/visits.ts';
import { findOccasions, type Occasions } from '../occasions/index.ts';
import { NO_LOG_WORDS } from '../occasions/words.ts';
import { once } from '../once.ts';
import { type Moments, moments } from '../stats/moments.ts';
import { bandBeyond, bandOf } from '../targets/bands.ts';
import { mgPerDl } from '../units.ts';
import { type ClockBins, clockBins } from './clockBins.ts';
import { type Course, findHighs, findLows } from './course.ts';
import type { Basis } from './estimate.ts';

/** What is asked beside the period itself. */
export interface Asked {
  /** What to compare the period with; null: nothing. */
  comparedWith: ComparedWith | null;
  /** Earlier visits, the latest last, and whether days in both show that that one is this person's. */
  visits: { earlier: readonly Visit[]; proved: boolean };
  /** Medicines to look for in notes. */
  medicines: readonly Medicine[];
  /** Whether rises without a food note are listed as inferred meals. */
  inferMeals?: boolean;
  /** A laboratory A1C as it was typed in. */
  a1c: { value: number; unit: '%' | 'mmol/mol' } | null;
  /** Due date of a pregnancy. */
  dueDate: LocalDate | null;
  /** Goals of the clinic in pregnancy, which go before the published ones. */
  pregnancyGoals?: PregnancyGoals | null;
}

export const NOTHING_ASKED: Asked = {
  comparedWith: null,
  visits: { earlier: [], proved: true },
  medicines: [],
  a1c: null,
  dueDate: null,
};

/** What measures share, so that every reading is classified once and every day summed once. */
export interface Context extends Asked {
  timeline: Timeline;
  targets: TargetSet;
  /** Index into BANDS of each reading, found in its native unit. */
  bands: Uint8Array;
  /**
   * mg/dL of each reading, with a stand-in where the sensor's bound is unknown, for order and extremes only: the
   * lowest (highest) value the sensor did report, or the outer limit when that lies further out.
   */
  heights: Float64Array;
  /** Minutes with readings by day, and by day and band (day * 5 + band). */
  dayMinutes: Float64Array;
  dayBands: Float64Array;
  /** Share of each day's minutes with readings, at most 1. */
  dayShares: Float64Array;
  /** Mean and SD of all readings whose value or bound is known. */
  moments(): Moments;
  clockBins(): ClockBins;
  lows(): Course[];
  highs(): Course[];
  /** Notes lined up with readings. */
  occasions(): Occasions;
  /** Denominators already drawn, by the column they stand in. */
  bases: Map<Float64Array, Basis>;
  /** Comparisons already made, by their earlier side. */
  compared: Map<PeriodSums, Comparison>;
}

export function context(
  timeline: Timeline,
  targets: TargetSet,
  words: LogWords = NO_LOG_WORDS,
  asked: Asked = NOTHING_ASKED,
): Context {
  const { readings, days } = timeline;
  const bands = classify(readings, targets);
  const dayMinutes = new Float64Array(days.length);
  const dayBands = new Float64Array(days.length * 5);
  const { day, weight, count } = readings;
  for (let i = 0; i < count; i++) {
    const cell = day[i]! * 5 + bands[i]!;
    dayBands[cell] = dayBands[cell]! + weight[i]!;
    dayMinutes[day[i]!] = dayMinutes[day[i]!]! + weight[i]!;
  }
  const heights = standIns(readings, targets);
  const shared: Context = {
    timeline,
    targets,
    ...asked,
    bands,
    heights,
    dayMinutes,
    dayBands,
    dayShares: dayMinutes.map((minutes, d) => Math.min(1, minutes / days[d]!.minutes)),
    moments: once(() => moments(readings.mgdl, readings.weight)),
    clockBins: once(() => clockBins(timeline, heights)),
    lows: once(() => findLows(shared)),
    highs: once(() => findHighs(shared)),
    occasions: once(() => findOccasions(shared, words, asked.inferMeals ?? false)),
    bases: new Map(),
    compared: new Map(),
  };
  return shared;
}

function classify({ count, unit, limit, native }: Readings, targets: TargetSet): Uint8Array {
  const bands = new Uint8Array(count);
  const mgdl: Limits = targets.limits['mg/dL'];
  const mmol: Limits = targets.limits['mmol/L'];
  for (let i = 0; i < count; i++) {
    const limits = unit[i] === 0 ? mgdl : mmol;
    const side = limit[i]!;
    const value = native[i]!;
    bands[i] = side === 0 ? bandOf(value, limits) : bandBeyond(side < 0 ? -1 : 1, value, limits);
  }
  return bands;
}

function standIns({ count, mgdl, limit }: Readings, targets: TargetSet): Float64Array {
  const limits = targets.limits['mg/dL'];
  let lowest = limits.veryLow;
  let highest = limits.veryHigh ?? limits.high;
  let unknown = false;
  for (let i = 0; i < count; i++) {
    const value = mgdl[i]!;
    if (value < lowest) lowest = value;
    else if (value > highest) highest = value;
    else if (Number.isNaN(value)) unknown = true;
  }
  if (!unknown) return mgdl;
  return mgdl.map((value, i) => (!Number.isNaN(value) ? value : limit[i]! < 0 ? lowest : highest));
}

/** The height of a reading as a glucose value. */
export function heightAt(shared: Context, reading: number): MgPerDl {
  return mgPerDl(shared.heights[reading]!);
}

/** Whether a reading lies at a limit of the sensor, and at which. */
export function limitAt({ timeline }: Context, reading: number): -1 | 0 | 1 {
  return timeline.readings.limit[reading]! as -1 | 0 | 1;
}

/** Whether a reading lies further out than another; at the same height one beyond the sensor's limit on that side does. */
export function liesFurther(
  { heights, timeline }: Context,
  side: 'low' | 'high',
  reading: number,
  than: number,
): boolean {
  const { limit } = timeline.readings;
  const [lower, upper] = side === 'low' ? [reading, than] : [than, reading];
  const ahead = heights[upper]! - heights[lower]!;
  return ahead > 0 || (ahead === 0 && limit[upper]! > limit[lower]!);
}

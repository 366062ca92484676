import type { DayWindows, HourShares, ModalDay } from './clockShape.ts';
import type { Episodes, Rebounds } from './episodes.ts';
import type { LocalDate, MgPerDl } from './glucose.ts';
import type { LongHighs } from './highs.ts';
import type { LowStories } from './lowStories.ts';
import type { Estimate, Measured } from './measured.ts';
import type { OutcomeNotes } from './notedBefore.ts';
import type { Comparison, Correction, Meal, NoteLog, Session } from './occasions.ts';
import type { FixedTimes, InsulinNoted, LowsLined, Pregnancy, WeekParts } from './readingOrders.ts';
import type { Remark } from './remarks.ts';
import type { Band } from './targets.ts';
import type { ThenAndNow } from './thenAndNow.ts';
import type {
  Alarms,
  CurveRange,
  Fingersticks,
  MedicinesNoted,
  OddStretches,
  Overnight,
  PressedLows,
  Rates,
  Sensors,
} from './trust.ts';
import type { LastTime, VisitByVisit } from './visits.ts';

export type { DayWindow, DayWindows, HourShares, ModalBin, ModalDay } from './clockShape.ts';
export type { Episode, EpisodeDay, Episodes, Rebounds } from './episodes.ts';

/** Minutes in each band, exclusive; they sum to the minutes with readings. */
export type BandMinutes = Record<Band, number>;

/** How much of the period holds readings. Share = minutes with readings / minutes of the calendar days chosen. */
export interface Coverage {
  share: number;
  /** Hours with readings, and hours of the period. */
  hours: number;
  ofHours: number;
  /** 00:00-06:00 apart. */
  night: { share: number; hours: number; ofHours: number };
  byDay: { date: LocalDate; share: number; hours: number }[];
  /** 24 shares, local clock hours 0 … 23. */
  byHour: number[];
  /** Days with any reading; days with at least 70 % of their minutes. */
  daysWithReadings: number;
  fullDays: number;
  /** 14 days and 70 % (Battelino 2019). */
  enough: boolean;
  /** 72 hours of readings in all. */
  reached72h: boolean;
  /** 72 hours, and nights at least half as well seen as the whole: these readings may stand for a day of 24 hours (ours). */
  wholeDay: boolean;
  /** Minutes in pauses longer than the gap rule, inside the period, by kind. */
  missing: { hole: number; change: number; edge: number };
}

/**
 * Mean sensor glucose. `bounded`: readings at the sensor's limits make it a bound; `censored` counts them. `bound`: lower where
 * all of those are high, upper where all are low; with some on both sides it is near the mean and bounds it neither way.
 */
export interface MeanGlucose {
  mgdl: Estimate;
  bounded: boolean;
  bound: 'lower' | 'upper' | 'both' | null;
  censored: number;
  /** Those below what the sensor can show, and those above. */
  below: number;
  above: number;
}

/** Estimated from the sensor mean by its two published equations; not a laboratory A1C. */
export interface Gmi {
  percent: number;
  mmolPerMol: number;
}

/** A laboratory A1C beside the sensor. `eag`: average glucose that goes with it (ADAG). `apart`: GMI minus A1C, percent. */
export interface LabA1c {
  percent: number;
  mmolPerMol: number;
  eag: MgPerDl;
  mean: MgPerDl | null;
  gmi: number | null;
  difference: number | null;
}

/** Share of time in each band, 0 to 1. `low` and `high` in `cumulative` include the outer level. */
export interface TimeInBands {
  minutes: BandMinutes;
  exclusive: Record<Band, Estimate>;
  cumulative: { low: Estimate; high: Estimate };
  /** Against the set's goals, unrounded values compared; empty where the set has none. */
  goals: { of: 'in-range' | 'low' | 'very-low' | 'high' | 'very-high'; op: '<' | '>'; share: number; met: boolean }[];
  /**
   * 14 days and 70 % (Battelino 2019), as `enough` of the coverage. Where false there is no verdict on a goal, and
   * `met` says no more than on which side of it the share lies.
   */
  judged: boolean;
}

/** One night, 00:00-06:00, named by the day it belongs to. */
export interface Night {
  date: LocalDate;
  /** Share of its minutes with readings. Under 70 % the night is not called free of lows. */
  share: number;
  state: 'very-low' | 'low' | 'none-seen' | 'unknown';
  /** Before the first reading of the period or after its last: no night of the recording. */
  outside: boolean;
  /** Minutes below the low and the very low limit, of the minutes with readings. */
  lowMinutes: number;
  veryLowMinutes: number;
  highMinutes: number;
  lowest: MgPerDl | null;
  /** Whether the lowest lies at the sensor's limit. */
  lowestLimit: -1 | 0 | 1;
  lowestMinute: number | null;
  /** Longest low episode overlapping the night, minutes; 0 when none. */
  longestLow: number;
}

/** One calendar day in short. */
export interface DailySummary {
  date: LocalDate;
  share: number;
  mean: MgPerDl | null;
  lowest: MgPerDl | null;
  highest: MgPerDl | null;
  /** Whether these two lie at a limit of the sensor. */
  limits: { lowest: -1 | 0 | 1; highest: -1 | 0 | 1 };
  /** As of the mean of all days. */
  bound: MeanGlucose['bound'];
  minutes: BandMinutes;
  /** Share in range of its readings; null without readings. */
  inRange: number | null;
  /** At least 70 % of its minutes with readings. */
  full: boolean;
}

/** Nocturnal nadir to before breakfast (06:00-08:00 or the first meal noted), night by night. */
export interface DawnRise {
  nights: { date: LocalDate; nadir: MgPerDl; nadirMinute: number; before: MgPerDl; rise: number }[];
  median: number;
  /** Nights left out: a low in the night, or too few readings. */
  leftOut: number;
}

/** Everything measured, by name. */
export interface Measures {
  coverage: Measured<Coverage>;
  mean: Measured<MeanGlucose>;
  /** mg/dL, n - 1. */
  sd: Measured<number>;
  /** Percent. */
  cv: Measured<number>;
  /** The same with its interval, percent. */
  cvRange: Measured<Estimate>;
  gmi: Measured<Gmi>;
  labA1c: Measured<LabA1c>;
  timeInBands: Measured<TimeInBands>;
  modalDay: Measured<ModalDay>;
  curveRanges: Measured<CurveRange[]>;
  hourly: Measured<HourShares[]>;
  lows: Measured<Episodes>;
  highs: Measured<Episodes>;
  longHighs: Measured<LongHighs>;
  lowStories: Measured<LowStories>;
  nights: Measured<Night[]>;
  daily: Measured<DailySummary[]>;
  windows: Measured<DayWindows>;
  dawnRise: Measured<DawnRise>;
  rebounds: Measured<Rebounds>;
  overnight: Measured<Overnight>;
  rates: Measured<Rates>;
  sensors: Measured<Sensors>;
  oddStretches: Measured<OddStretches>;
  pressedLows: Measured<PressedLows>;
  fingersticks: Measured<Fingersticks>;
  medicinesNoted: Measured<MedicinesNoted>;
  alarms: Measured<Alarms>;
  thenAndNow: Measured<ThenAndNow>;
  noteLog: Measured<NoteLog>;
  meals: Measured<Meal[]>;
  exercise: Measured<Session[]>;
  corrections: Measured<Correction[]>;
  comparisons: Measured<Comparison[]>;
  notedBefore: Measured<OutcomeNotes[]>;
  fixedTimes: Measured<FixedTimes>;
  weekParts: Measured<WeekParts>;
  lowsLined: Measured<LowsLined>;
  insulinNoted: Measured<InsulinNoted>;
  pregnancy: Measured<Pregnancy>;
  remarks: Measured<Remark[]>;
  lastTime: Measured<LastTime>;
  visitByVisit: Measured<VisitByVisit>;
}

import type { Instant, LocalDate, MgPerDl } from './glucose.ts';
import type { Episode } from './measures.ts';

/** A fingerstick noted beside a sensor reading. */
export interface StickPair {
  at: Instant;
  date: LocalDate;
  minute: number;
  /** The fingerstick, and the sensor reading nearest in time. */
  finger: MgPerDl;
  sensor: MgPerDl;
  /** Hours since the sensor began; null where its start is not seen. */
  hoursWorn: number | null;
  zone: GridZone;
}

/** Zones of the consensus error grid: A no effect on what is done, E dangerous. */
export type GridZone = 'A' | 'B' | 'C' | 'D' | 'E';

/** How far sensor and fingersticks agree. Agreement, not accuracy: a fingerstick has its own error. Shares 0 to 1. */
export interface Fingersticks {
  pairs: StickPair[];
  /** Fingersticks noted with an amount, and those of them without a reading near enough. */
  noted: number;
  alone: number;
  /** Mean and median of |sensor - finger| / finger. */
  mard: number;
  medianArd: number;
  /** Mean of sensor - finger, mg/dL, and of its share of the finger value. */
  bias: number;
  relativeBias: number;
  /** Mean of |sensor - finger|, mg/dL. */
  mad: number;
  /** Within 15 mg/dL below 100 mg/dL and 15 % from there on; the same with 20. */
  within15: number;
  within20: number;
  zones: Record<GridZone, number>;
  /** The same mean without the first 24 hours of each sensor; null where no pair lies outside them or no start is seen. */
  afterFirstDay: { pairs: number; mard: number } | null;
}

/** One sensor as far as it is seen. `begun`: its start is seen, after a pause of so many minutes. */
export interface SensorWorn {
  from: Instant;
  to: Instant;
  date: LocalDate;
  interval: number;
  readings: number;
  begun: boolean;
  pauseMinutes: number | null;
}

/** One day of wear over all sensors whose start is seen; day 1 is the first 24 hours. */
export interface DayOfSensor {
  day: number;
  sensors: number;
  /** Share of its hours with readings. */
  share: number;
  mean: MgPerDl | null;
  /** Shares of the readings. */
  low: number;
  inRange: number;
}

export interface Sensors {
  worn: SensorWorn[];
  byDay: DayOfSensor[];
}

/** Stretches of readings that look unlike glucose. Nothing is taken out. */
export interface OddStretches {
  /** The same value for an hour or more. */
  flat: { date: LocalDate; minute: number; minutes: number; value: MgPerDl }[];
  /** Neighbouring readings further apart than glucose is likely to move. */
  jumps: { date: LocalDate; minute: number; from: MgPerDl; to: MgPerDl; minutes: number }[];
  /** Readings below, and above, what the sensor tells. */
  belowLimit: number;
  aboveLimit: number;
  /** Half a day or more on end at one value or beyond one end of the sensor, in order of time. */
  still: StillStretch[];
  /** Minutes of them, as a share (0 to 1) of all minutes with readings. */
  stillShare: number;
}

/** `value` is null where the readings lay beyond what the sensor can show. */
export interface StillStretch {
  date: LocalDate;
  minute: number;
  toDate: LocalDate;
  minutes: number;
  side: 'below' | 'above' | 'value';
  value: MgPerDl | null;
}

/** A low that looks like pressure on the sensor. It stays in every count. */
export interface PressedLow {
  low: Episode;
  /** mg/dL over the quarter of an hour before it, and back over the quarter of an hour at its end. */
  fall: number;
  back: number;
}

export interface PressedLows {
  list: PressedLow[];
  /** All lows, and those at night, with them. */
  lows: number;
  nightLows: number;
  veryLows: number;
  pressedVeryLows: number;
}

/** A medicine that the literature lists as able to disturb sensors, and the words people use for it. */
export interface Medicine {
  id: string;
  words: string[];
  source: string;
}

/** Notes that name such a medicine. */
export interface MedicinesNoted {
  list: { id: string; noted: string; date: LocalDate; minute: number | null }[];
}

/** Alarms written down, beside the lows that were seen. Nothing is known of alarms that were not noted. */
export interface Alarms {
  noted: number;
  days: number;
  /** Nights (00:00-06:00) with an alarm, and all alarms in them. */
  nights: { date: LocalDate; alarms: number }[];
  /** Lows with an alarm from 15 minutes before to their end, and all lows. */
  lowsWith: number;
  lows: number;
  /** Alarms with no low within an hour. */
  withoutLow: number;
}

/** From midnight to 06:00, night by night; mg/dL. */
export interface Overnight {
  nights: { date: LocalDate; start: MgPerDl; end: MgPerDl; change: number; range: number }[];
  median: number;
  /** Within ±30 mg/dL from start to end, and no more than 50 between lowest and highest (ours). */
  steady: number;
}

/** How fast glucose moves: slopes over 20 minutes. Shares 0 to 1 of the slopes. */
export interface Rates {
  falling: { over1: number; over2: number; over3: number };
  rising: { over1: number; over2: number; over3: number };
  /** Steepest line of 20 minutes, mg/dL a minute, and where. */
  steepest: { rate: number; date: LocalDate; minute: number; from: MgPerDl; to: MgPerDl } | null;
  /** Largest fall from one reading to a later one of the same 20 minutes; whether either lies at the sensor's limit. */
  largest: {
    date: LocalDate;
    minute: number;
    minutes: number;
    from: MgPerDl;
    to: MgPerDl;
    limits: { from: -1 | 0 | 1; to: -1 | 0 | 1 };
  } | null;
}

/** A percentile of the usual day with its interval, mg/dL. */
export interface CurveRange {
  minute: number;
  p25: { value: number; low: number; high: number };
  p50: { value: number; low: number; high: number };
  p75: { value: number; low: number; high: number };
}

import type { Instant, LocalDate, MgPerDl } from './glucose.ts';
import type { NoteKind } from './input.ts';
import type { Slot } from './logbook.ts';

/**
 * Why what followed a note is not compared. gap: too few readings, or none before it. overlap: other food within two
 * hours. low-at-start: glucose was low then, or what was eaten is noted for lows. small: under 10 g noted. exercise:
 * noted in the hour before exercise.
 */
export type Unusable = 'gap' | 'overlap' | 'low-at-start' | 'small' | 'exercise';

/** Glucose after a meal note. Times in minutes from the note. */
export interface MealCourse {
  /** Mean of the 15 minutes before the note. */
  baseline: MgPerDl;
  /** Nearest reading within 10 minutes; null when there is none. */
  oneHour: MgPerDl | null;
  twoHours: MgPerDl | null;
  /** Highest reading of the first three hours; `peakLimit` when it lies at the sensor's limit and is only a bound. */
  peak: MgPerDl;
  peakLimit: boolean;
  increment: number;
  minutesToPeak: number;
  /** Minutes above the high limit in 3 hours, and in 4; null when less than 70 % of the 4 hours was seen. */
  highMinutes: number;
  highMinutes4h: number | null;
  /** Incremental area over 3 hours, mg/dL min (Wolever's rule). */
  area: number;
  /** First reading after the peak that is back within 10 mg/dL of the baseline, within 4 hours; null when not seen. */
  returnMinutes: number | null;
  /** Whether a low began within 4 hours; null when that cannot be told. */
  low: boolean | null;
}

/** What a person noted beside an occasion, or what is known of its day. `name` of a food or a kind of exercise, else ''. */
export interface Noted {
  id:
    | 'exercise'
    | 'exercise-kind'
    | 'food'
    | 'bedtime-food'
    | 'insulin'
    | 'insulin-only'
    | 'insulin-after'
    | 'more-carbs'
    | 'alarm'
    | 'weekend'
    | 'first-sensor-day';
  name: string;
}

export interface Meal {
  at: Instant;
  date: LocalDate;
  weekday: number;
  minute: number;
  slot: Slot;
  /** Names as grouped; empty when none was written. */
  foods: string[];
  /** Grams; null: not written down. */
  carbs: number | null;
  /** The nearest mealtime insulin noted within an hour; minutes after the meal note, negative before. */
  insulin: { when: 'before' | 'with' | 'after'; minutes: number } | { when: 'none-noted' };
  /** Glucose was already rising when the note was made. */
  late: boolean;
  /** Of a late note: minutes from the lowest reading of the hour before it, where the rise began, to the note; else null. */
  riseBefore: number | null;
  /** Seen in the curve, not written down. */
  inferred: boolean;
  unusable: Unusable[];
  course: MealCourse | null;
  /** Its own foods, amount and insulin, and what was noted from four hours before it to three after. */
  nearby: Noted[];
}

/** From some time of a day to 6 the next morning: the evening and the night in one piece. */
export interface UntilMorning {
  minutes: number;
  /** Any reading below the low limit; null when none was and too little was seen, or an hour and more is missing. */
  low: boolean | null;
  lowMinutes: number;
  lowest: MgPerDl | null;
  /** Minutes from its beginning. */
  lowestAfter: number | null;
}

export interface Session {
  at: Instant;
  date: LocalDate;
  minute: number;
  /** As written, in lower case; null: not written down. */
  kind: string | null;
  /** From the first note to the end of the last that belongs to it; null: not written down. */
  minutes: number | null;
  effort: 'light' | 'hard' | 'not-noted';
  /** Food noted in the hour before: without mealtime insulin, with it, or nothing written down. */
  carbsFirst: 'extra' | 'meal' | 'none-noted';
  /** Grams of it, where written. */
  carbs: number | null;
  /** Nearest reading within 10 minutes of the start. */
  start: MgPerDl | null;
  /** Largest fall over 20 minutes while it lasted, mg/dL. */
  steepest: number | null;
  lowestDuring: MgPerDl | null;
  /** From the start to two hours after the end, and whether any reading there was low (null: cannot be told). */
  lowestSoon: MgPerDl | null;
  lowSoon: boolean | null;
  /** From the start on. */
  untilMorning: UntilMorning;
}

/** Mealtime insulin noted without food. */
export interface Correction {
  at: Instant;
  date: LocalDate;
  minute: number;
  start: MgPerDl | null;
  /** mg/dL, negative when it fell; null when not seen. */
  change2h: number | null;
  change4h: number | null;
  low: boolean | null;
  /** `overlap`: food or more insulin noted within 2 hours. */
  unusable: Extract<Unusable, 'gap' | 'overlap' | 'low-at-start'>[];
  /** What was noted from four hours before it to four after. */
  nearby: Noted[];
}

/** One medicine as it was noted. What it did is not looked at. */
export interface MedicineNoted {
  /** As first written. */
  name: string;
  days: number;
  /** Every note; `minute` is null where no time was written. */
  notes: { date: LocalDate; minute: number | null }[];
}

/** How complete the log is. What is not written down may still have happened. */
export interface NoteLog {
  days: number;
  /** Days with any note. */
  noted: number;
  /** Days with a note of a kind. */
  byKind: { kind: NoteKind; days: number; notes: number }[];
  /** Notes by kind and clock hour, 24 each. */
  byHour: { kind: NoteKind; hours: number[] }[];
  /** Days with a food note in the slot. */
  mealDays: Partial<Record<Slot, number>>;
  /** Notes of medicine, the name noted most first. */
  medication: MedicineNoted[];
  /** Food notes, those with grams, those made while glucose was already rising. */
  meals: number;
  withCarbs: number;
  late: number;
  /** Sessions, those with minutes, and short bouts that are not taken as sessions (under 10 minutes). */
  sessions: number;
  withMinutes: number;
  shortBouts: number;
}

export type ComparisonId =
  | 'extra-carbs'
  | 'exercise-or-rest'
  | 'exercise-kind'
  | 'food'
  | 'insulin-after'
  | 'carb-amount'
  | 'weekend';

/** One side of a comparison, with every occasion in it. */
export interface Side {
  /** Food or exercise kind; '' where the comparison's own words name the side. */
  name: string;
  n: number;
  /** Null without occasions. */
  median: number | null;
  /** Quartiles (type 7). */
  low: number | null;
  high: number | null;
  occasions: { date: LocalDate; minute: number; value: number; low: boolean | null }[];
  /** Occasions after which a low was seen, of those where it can be told. */
  lows: number;
  lowsOf: number;
  /** Occasions of this kind that are not among them: not seen well enough, or set apart by the rules of the comparison. */
  leftOut: number;
}

/** How many of how many. */
export interface Times {
  k: number;
  n: number;
}

/** A note by which the two sides of a comparison differ besides what is compared. */
export interface AlsoDiffers extends Noted {
  a: Times;
  b: Times;
}

export interface Comparison {
  id: ComparisonId;
  /** For meals: within which part of the day. */
  slot: Slot | null;
  /** For `carb-amount`: the grams that part the two sides. */
  grams: number | null;
  /** For `exercise-or-rest`: the clock minute from which days without exercise are looked at. */
  fromMinute: number | null;
  /** minutes above the high limit in 3 hours · lowest glucose to 6 in the morning, mg/dL · fall from the start, mg/dL */
  of: 'high-minutes' | 'lowest' | 'fall';
  a: Side;
  b: Side;
  /** too-few: under 3 on a side. hint: larger than day-to-day chance by the guarded rule, and large enough to matter. */
  verdict: 'too-few' | 'not-told-apart' | 'hint';
  /** Mean of a minus mean of b, with its 95 % interval; null when too few. */
  difference: { value: number; low: number; high: number } | null;
  /** Two-sided permutation probability; null when too few. */
  p: number | null;
  /** The note that differs most between the two sides; null when none differs by a third of the occasions, or too few. */
  alsoDiffers: AlsoDiffers | null;
}

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
}

/** A night as the boxes of page 1 count it. */
export interface NightAfter {
  date: LocalDate;
  /** Any reading below the low limit; null when the night was not seen well enough to say none. */
  low: boolean | null;
  lowest: MgPerDl | null;
  lowestMinute: number | null;
  lowMinutes: number;
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
  /** Lows that began from its start to 24 hours later. */
  lows24h: number;
  /** The night that follows; null after the last day. */
  night: NightAfter | null;
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
  | 'extra-carbs-soon'
  | 'extra-carbs-night'
  | 'exercise-night'
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
}

export interface Comparison {
  id: ComparisonId;
  /** For meals: within which part of the day. */
  slot: Slot | null;
  /** For `carb-amount`: the grams that part the two sides. */
  grams: number | null;
  /** minutes above the high limit in 3 hours · lowest glucose, mg/dL · fall from the start, mg/dL */
  of: 'high-minutes' | 'lowest' | 'fall';
  a: Side;
  b: Side;
  /** too-few: under 3 on a side. hint: larger than day-to-day chance by the guarded rule, and large enough to matter. */
  verdict: 'too-few' | 'not-told-apart' | 'hint';
  /** Mean of a minus mean of b, with its 95 % interval; null when too few. */
  difference: { value: number; low: number; high: number } | null;
  /** Two-sided permutation probability; null when too few. */
  p: number | null;
}

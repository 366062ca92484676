import type { LocalDate, MgPerDl } from './glucose.ts';

/** The value at one time of one day: the mean of the 15 minutes before. */
export interface AtTime {
  date: LocalDate;
  mgdl: MgPerDl;
}

/** Before the first meal noted (or before 6 AM where none is), and before 11 PM; day by day. */
export interface FixedTimes {
  fasting: AtTime[];
  bedtime: AtTime[];
  /** Median of each, mg/dL; null under three days. */
  fastingMedian: MgPerDl | null;
  bedtimeMedian: MgPerDl | null;
}

/** Insulin as noted: what is not written down may still have been taken. */
export interface InsulinNoted {
  /** Days of the period, and days with an amount. */
  days: number;
  noted: number;
  perDay: { date: LocalDate; units: number; notes: number }[];
  /** Of the days with an amount, units. */
  median: number;
  /** The same for insulin named as long-acting, and for all other doses; null where none is noted. */
  longActing: { noted: number; median: number } | null;
  others: { noted: number; median: number } | null;
  /** Whether a pump's rates are noted too: they are no part of these units. */
  rates: boolean;
  /** Notes that give no amount. */
  withoutAmount: number;
}

/** Median glucose by clock hour, Monday to Friday and at the weekend; null under three days. */
export interface WeekParts {
  weekdays: number;
  weekends: number;
  hours: { hour: number; weekday: MgPerDl | null; weekend: MgPerDl | null }[];
}

/** Lows that began in a stretch of hours, and the hours with readings in it. */
export interface Stretch {
  from: number;
  to: number;
  lows: number;
  hours: number;
}

/** Lows lined up on the end of the exercise noted last, and on bedtime (11 PM). */
export interface LowsLined {
  /** Lows that began while exercise was noted, and its hours with readings. */
  during: { lows: number; hours: number };
  /** Hours after it. */
  exercise: Stretch[];
  bedtime: Stretch[];
  /** Lows and hours with no exercise noted in the 24 hours before. */
  without: { lows: number; hours: number };
}

/** Seven days of a pregnancy; shares null where less than 70 % of them was seen. */
export interface PregnancyWeek {
  from: LocalDate;
  days: number;
  share: number;
  inRange: number | null;
  low: number | null;
  mean: MgPerDl | null;
  /** Completed weeks on its first day; null without a due date. */
  week: number | null;
}

/** Values at one time beside a published goal, or the clinic's own. */
export interface BesideGoal {
  n: number;
  median: MgPerDl | null;
  below: number;
  goal: MgPerDl;
  /** Whose goal it is. */
  of: 'published' | 'clinic';
}

export interface Pregnancy {
  weeks: PregnancyWeek[];
  fasting: BesideGoal;
  oneHour: BesideGoal;
  twoHours: BesideGoal;
}

import type { Episode } from './episodes.ts';
import type { LocalDate, MgPerDl } from './glucose.ts';

/** A high that held two hours or more beyond the level, with what was noted from three hours before it to its end. */
export interface LongHigh {
  high: Episode;
  /** Minutes beyond the level, in all and on end. */
  minutes: number;
  unbroken: number;
  /** Notes near it: doses of insulin, long-acting insulin and a pump's rates, food. */
  insulin: number;
  basal: number;
  food: number;
}

/** Long highs, as lows are told: each of them, and what the log holds on the days with most of it. */
export interface LongHighs {
  /** The set's very high limit, or 200 mg/dL (11.1 mmol/L) where a set of pregnancy has none; mg/dL. */
  level: MgPerDl;
  list: LongHigh[];
  /** Share of the time with readings beyond the level, 0 to 1; longest stretch of it on end, and most of it on one day, minutes. */
  share: number;
  unbroken: number;
  mostInDay: number;
  /**
   * Days of the period, and those of them with a note of: a dose of insulin that no name tells to act for long, long-acting
   * insulin or a pump's rate, food.
   */
  days: number;
  insulinDays: number;
  basalDays: number;
  foodDays: number;
  /** Which of the two `basalDays` holds. */
  basal: 'none' | 'long-acting' | 'rates' | 'both';
  /** At most four days with an hour or more beyond the level, most of it first. */
  top: { date: LocalDate; minutes: number; insulin: boolean; basal: boolean; food: boolean }[];
}

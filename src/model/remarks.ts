import type { Instant, LocalDate } from './glucose.ts';

/** What a remark stands near: a low or a high by its place in the list of lows or highs, a night by its day. */
export type Near = { of: 'low' | 'high'; index: number } | { of: 'night'; date: LocalDate };

/** What a person wrote in their own words. Hostile text, whole: nothing of it is cut. */
export interface Remark {
  at: Instant;
  date: LocalDate;
  /** Null where no time was written: then it stands near nothing but its day. */
  minute: number | null;
  text: string;
  /** Speaks of how it felt, by the words of the logbook; also where it says that nothing was felt. */
  felt: boolean;
  near: Near[];
}

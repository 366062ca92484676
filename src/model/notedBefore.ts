import type { LocalDate } from './glucose.ts';
import type { Noted, Times } from './occasions.ts';

/**
 * What may have come on a day of 24 hours from 6 in the morning. lows: one began. very-lows: one of level 2 began.
 * night-lows: one lay between midnight and 6. very-highs: a high with 2 hours and more beyond the outer limit began.
 * much-high: more of its time above the high limit than on the middle day. unsteady: its CV above that of the middle day.
 */
export type Outcome = 'lows' | 'very-lows' | 'night-lows' | 'very-highs' | 'much-high' | 'unsteady';

/** One note beside one outcome, counted both ways. */
export interface NoteBefore extends Noted {
  /** So many hours after it (after its end) an event counts as following it. */
  hours: number;
  /** Events that followed it, of all; of 0 where the outcome is no event. */
  followed: Times;
  /** Days with it on which the outcome came, and days without it. */
  withIt: Times;
  without: Times;
  /** Two-sided exact probability of these days; null where too few, or where the note follows glucose itself. */
  p: number | null;
  /**
   * too-few: under 3 days on a side. follows: an alarm, which glucose sets off. hint: by the rule against many
   * comparisons; where the outcome is more frequent with it, half of the events followed it as well.
   */
  verdict: 'too-few' | 'follows' | 'not-told-apart' | 'hint';
}

export interface OutcomeNotes {
  of: Outcome;
  /** Days on which it can be told, and those on which it came. */
  days: number;
  dates: LocalDate[];
  /** Events in all, and those that began before the first of these days. */
  events: number;
  leftOut: number;
  /** Hints first, the least likely foremost. */
  notes: NoteBefore[];
}

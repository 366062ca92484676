import type { Shown } from './detail.ts';
import type { LocalDate, MgPerDl } from './glucose.ts';
import type { Estimate } from './measured.ts';
import type { Question } from './question.ts';

/**
 * A value on its way into a sentence. Rounding, units and locale happen once, in language/: whoever makes a
 * quantity leaves it unrounded.
 */
export type Quantity =
  | { q: 'count'; value: number }
  /**
   * 0 to 1; spoken as percent, or in hours a day for the patient. `goal` is told in the same breath: the
   * text gets the decimals it takes not to contradict the verdict.
   */
  | { q: 'share'; value: number; goal?: number }
  /** Percent with exactly one decimal, as laboratories print an A1C. */
  | { q: 'percent'; value: number }
  /** How many of how many, told as the fixed frequency word with its count: "most nights (9 of 13)". */
  | { q: 'often'; k: number; n: number; of: 'days' | 'nights' | 'lows' }
  /** A duration. */
  | { q: 'minutes'; value: number }
  | { q: 'glucose'; value: MgPerDl; limit?: -1 | 0 | 1 }
  /** A difference of glucose. */
  | { q: 'rise'; value: number }
  /** A limit of the target set, by its name, spoken in the unit shown with the published pair (70 and 3.9). */
  | { q: 'limit'; of: 'very-low' | 'low' | 'high' | 'very-high' }
  /** Minute of the local day, 0 … 1440. */
  | { q: 'clock'; value: number }
  | { q: 'date'; value: LocalDate }
  | { q: 'dates'; value: LocalDate[] }
  | { q: 'estimate'; value: Estimate; as: 'share' | 'glucose' | 'minutes'; goal?: number }
  | { q: 'word'; value: string }
  /** What a reader found or expected. */
  | { q: 'shown'; value: Shown }
  /** What an issue asks, as the option that answers it. */
  | { q: 'question'; value: Question };

export type Params = Record<string, Quantity>;

import type { LocalDate, MgPerDl } from './glucose.ts';
import type { Estimate } from './measured.ts';

/**
 * A value on its way into a sentence. Rounding, units and locale happen once, in language/: whoever makes a
 * quantity leaves it unrounded.
 */
export type Quantity =
  | { q: 'count'; value: number }
  /** 0 to 1; spoken as percent, or in hours a day for the patient. */
  | { q: 'share'; value: number }
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
  | { q: 'estimate'; value: Estimate; as: 'share' | 'glucose' | 'minutes' }
  | { q: 'word'; value: string };

export type Params = Record<string, Quantity>;

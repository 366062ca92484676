/** Why a number is withheld. Absence is a value: no NaN, no undefined, no zero in its place. */
export type Why =
  | 'no-readings'
  | 'too-few-readings'
  | 'too-few-days'
  | 'too-few-nights'
  | 'too-few-occasions'
  | 'not-for-these-targets'
  | 'bound-unknown'
  | 'not-asked'
  | 'none-noted'
  | 'no-pairs'
  | 'no-earlier-readings'
  | 'failed';

/** A number or table with what it rests on, or why there is none. `n` counts what `of` names. */
export type Measured<T> =
  | { ok: true; value: T; n: number; of: 'readings' | 'days' | 'nights' | 'episodes' | 'pairs' | 'occasions' | 'notes' }
  | { ok: false; why: Why };

/** A number with its interval. `low` and `high` are null when the data are too few for one. */
export interface Estimate {
  value: number;
  low: number | null;
  high: number | null;
  /** 0.95. */
  level: number;
  /** How the interval was made, e.g. `whole-day-resampling`. */
  method: string;
  /** Days behind it. */
  days: number;
}

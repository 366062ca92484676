import type { GlucoseUnit } from './glucose.ts';
import type { TargetSet } from './targets.ts';

/** Which calendar days to look at. */
export type PeriodChoice = { days: number } | { from?: string; to?: string };

/** Everything besides the inputs that an analysis depends on. */
export interface Settings {
  /** Unit shown; absent: the native unit of most readings. */
  unit?: GlucoseUnit;
  zone?: string;
  dateOrder?: 'day-first' | 'month-first' | 'year-first';
  targets: TargetSet['id'];
  /** Default: the last 14 days that hold data. */
  period?: PeriodChoice;
  layout?: unknown;
  /** Date of printing, YYYY-MM-DD, an argument so that the same input gives the same bytes. */
  today: string;
  /** Identity line. Never guessed from the files. */
  person: { name?: string; code?: string; clinic?: string };
}

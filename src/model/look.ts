import type { LocalDate } from './glucose.ts';
import type { Why } from './measured.ts';
import type { Params } from './quantity.ts';

/** Where a finding can be seen: a day, and the minutes of it when it is a window. */
export interface Evidence {
  date: LocalDate;
  fromMinute?: number;
  toMinute?: number;
}

/** What one finding saw. Untold is printed, so silence always means absent. */
export type Look<P = Params> =
  | { case: 'holds'; params: P; where: Evidence[]; variant?: string }
  | { case: 'absent' }
  | { case: 'untold'; why: Why };

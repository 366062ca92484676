import type { LocalDate } from './glucose.ts';
import type { Why } from './measured.ts';
import type { Params, Quantity } from './quantity.ts';

/** Where a finding can be seen: a day, and the minutes of it when it is a window. */
export interface Evidence {
  date: LocalDate;
  fromMinute?: number;
  toMinute?: number;
}

export type Also = Record<'note' | 'name' | 'a' | 'aOf' | 'b' | 'bOf', Quantity>;

/** What one finding saw. Untold is printed, so silence always means absent. */
export type Look<P = Params> =
  | {
      case: 'holds';
      params: P;
      where: Evidence[];
      variant?: string;
      /** Of two sides: the note by which they differ most besides, told in the same breath. */
      also?: Also;
    }
  | { case: 'absent' }
  | { case: 'untold'; why: Why };

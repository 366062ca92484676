import type { LocalDate } from '../../model/glucose.ts';
import type { Evidence } from '../../model/look.ts';
import { NIGHT_END } from '../../targets/consensus.ts';

/** A night, as the place where something was seen. */
export const nightOf = (date: LocalDate): Evidence => ({ date, fromMinute: 0, toMinute: NIGHT_END });

/** So many minutes from a clock time on, up to the end of the day. */
export const stretchFrom = ({ date, minute }: { date: LocalDate; minute: number }, minutes: number): Evidence => ({
  date,
  fromMinute: minute,
  toMinute: Math.min(1440, minute + minutes),
});

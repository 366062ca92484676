import { DAY_MINUTES } from '../time/calendar.ts';
import { NOON } from './eveningsOf.ts';
import { CONTENT_WIDTH } from './frame.ts';

/** Rows of evenings run from noon to noon, right of their dates; points. */
export const LEFT = 62;

export const place = (minute: number): number =>
  LEFT + (((minute - NOON + DAY_MINUTES) % DAY_MINUTES) / DAY_MINUTES) * (CONTENT_WIDTH - LEFT);

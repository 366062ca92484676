import { DAY_MINUTES } from '../time/calendar.ts';
import { NOON } from './eveningsOf.ts';
import { CONTENT_WIDTH } from './frame.ts';

/** Rows of evenings run from noon to noon, right of the date of the evening and left of that of the morning; points. */
export const LEFT = 62;
export const END = CONTENT_WIDTH - 34;

/** Where so many of the 24 hours from noon on have gone. */
export const gone = (hours: number): number => LEFT + (hours / 24) * (END - LEFT);

export const place = (minute: number): number => gone(((minute - NOON + DAY_MINUTES) % DAY_MINUTES) / 60);

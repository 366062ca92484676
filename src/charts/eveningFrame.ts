import { DAY_MINUTES } from '../time/calendar.ts';
import { NOON } from './eveningsOf.ts';
import { CONTENT_WIDTH } from './frame.ts';

/** Where a row of an evening runs, from noon to noon; points. */
export interface EveningFrame {
  left: number;
  end: number;
}

/** On paper right of the date of the evening and left of that of the morning. */
export const ON_PAPER: EveningFrame = { left: 62, end: CONTENT_WIDTH - 34 };

/** Where so many of the 24 hours from noon on have gone. */
export const gone = (hours: number, { left, end }: EveningFrame): number => left + (hours / 24) * (end - left);

export const place = (minute: number, frame: EveningFrame): number =>
  gone(((minute - NOON + DAY_MINUTES) % DAY_MINUTES) / 60, frame);

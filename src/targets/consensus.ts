/** A day, hour, night or window with less than this share of its minutes is not called seen (Battelino 2019; for meals ours). */
export const SEEN_SHARE = 0.7;

/** Days that are enough for steady numbers (Battelino 2019). */
export const ENOUGH_DAYS = 14;

/** The published floor: below it all is computed, and told to be unsteady. `seen` is the share of the time with readings. */
export const isEnough = (days: number, seen: number): boolean => days >= ENOUGH_DAYS && seen >= SEEN_SHARE;

/** Minute of the day at which the night ends: midnight to 06:00 (Danne 2017, Diabetes Care 40:1631-1640). */
export const NIGHT_END = 360;

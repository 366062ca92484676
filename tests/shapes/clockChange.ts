import type { When } from './timeForms.ts';

/** The clocks of a place go forward or back once: at this hour, as they would have shown it had they not. */
export interface ClockChange {
  at: number;
  minutes: 60 | -60;
}

/**
 * Changes of summer time by hours west or east of world time, on the clock of before. Directive 2000/84/EC: last Sundays of March and
 * October, 01:00 world time. US Energy Policy Act of 2005, section 110: second Sunday of March, first of November, 02:00.
 */
export const CHANGES: Record<string, Record<number, ClockChange>> = {
  spring: {
    120: { at: Date.UTC(2026, 2, 29, 3), minutes: 60 },
    [-300]: { at: Date.UTC(2026, 2, 8, 2), minutes: 60 },
  },
  autumn: {
    180: { at: Date.UTC(2025, 9, 26, 4), minutes: -60 },
    [-240]: { at: Date.UTC(2025, 10, 2, 2), minutes: -60 },
  },
};

export const changesClock = (start: string): boolean => CHANGES[start] !== undefined;

/** What the clock on the wall shows at a moment, and how far it is from world time then. */
export function clockAt({ offset, change }: { offset: number; change?: ClockChange | undefined }, wall: number): When {
  const moved = change && wall >= change.at ? change.minutes : 0;
  return { wall: wall + moved * 60_000, offset: offset + moved };
}

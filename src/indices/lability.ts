import { square } from '../stats/elementary.ts';
import { DAY_MINUTES } from '../time/calendar.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import type { Index } from './indexOf.ts';

const WEEK = 7 * DAY_MINUTES;
const SHORTEST = 60;
const LONGEST = 720;

/**
 * Sum of (change in mmol/L)^2 / hours. Made for fingersticks: readings are thinned to at least one hour apart, and
 * pairs more than twelve hours apart are left out. Formula from memory.
 */
export function labilitySum(mmol: ArrayLike<number>, minutes: ArrayLike<number>): number {
  let sum = 0;
  let last = 0;
  for (let i = 1; i < mmol.length; i++) {
    const elapsed = minutes[i]! - minutes[last]!;
    if (elapsed < SHORTEST) continue;
    if (elapsed <= LONGEST) sum += square(mmol[i]! - mmol[last]!) / (elapsed / 60);
    last = i;
  }
  return sum;
}

/** Lability index, for a week. */
export const lability: Index<number> = {
  id: 'lability',
  source: 'Ryan 2004, Diabetes 53:955-962',
  unit: '(mmol/L)2/h/wk',
  definition: { shortest: SHORTEST, longest: LONGEST },
  compute({ mgdl, minutes, seen, fullDays }) {
    if (mgdl.length === 0) return { ok: false, why: 'no-readings' };
    if (fullDays.length < 7) return { ok: false, why: 'too-few-days' };
    const sum = labilitySum(
      mgdl.map((value) => value / MGDL_PER_MMOL),
      minutes,
    );
    return { ok: true, value: sum / (seen / WEEK), n: fullDays.length, of: 'days' };
  },
};

import type { UntilMorning } from '../model/occasions.ts';
import type { Day, Timeline } from '../model/timeline.ts';
import { LOW } from '../targets/bands.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { DAY_MINUTES, MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import { readingFrom, type Signal, stretch } from './signal.ts';

/** So many minutes without a reading, and no low seen: nobody can say that there was none (ours). */
export const HOLE = 60;
/** Who moves before this minute of the day has the same night still before them (ours). */
const SMALL_HOURS = 240;

/** The six o'clock that ends the night of what began at this minute of a day; clocks change before it, never after. */
export function nextSix({ days }: Timeline, day: number, minute: number): number {
  if (minute < SMALL_HOURS) return sixOf(days[day]!);
  const next = days[day + 1];
  return next ? sixOf(next) : days[day]!.start + (days[day]!.minutes + NIGHT_END) * MINUTE_MS;
}

/** Six in the morning of a day. */
export const sixOf = ({ start, minutes }: Day): number => start + (NIGHT_END + minutes - DAY_MINUTES) * MINUTE_MS;

/** What was seen from an instant on to 6 in the morning, without a break at midnight. */
export function untilMorning(signal: Signal, at: number, six: number): UntilMorning {
  const { heights, bands, timeline } = signal;
  const { readings } = timeline;
  const whole = stretch(signal, at, six);
  let lowMinutes = 0;
  for (let i = whole.first; i < whole.end; i++) if (bands[i]! <= LOW) lowMinutes += readings.weight[i]!;
  const open = whole.low === false && longestHole(signal, at, six) > HOLE;
  return {
    minutes: (six - at) / MINUTE_MS,
    low: open ? null : whole.low,
    lowMinutes,
    lowest: whole.lowest < 0 ? null : mgPerDl(heights[whole.lowest]!),
    lowestAfter: whole.lowest < 0 ? null : (readings.at[whole.lowest]! - at) / MINUTE_MS,
  };
}

/** The longest time between two instants that no reading stands for, in minutes. */
function longestHole(signal: Signal, from: number, to: number): number {
  const { at, weight, count } = signal.timeline.readings;
  let seenTo = from;
  let longest = 0;
  for (let i = readingFrom(signal, from); i < count && at[i]! < to; i++) {
    longest = Math.max(longest, at[i]! - seenTo);
    seenTo = at[i]! + weight[i]! * MINUTE_MS;
  }
  return Math.max(longest, to - seenTo) / MINUTE_MS;
}

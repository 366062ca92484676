import type { Day, Readings, Timeline } from '../model/timeline.ts';
import { NIGHT_END } from './context.ts';

/** Minutes that each clock hour of a day held: 60, but for the hour a clock change takes away or gives twice. */
export function hourMinutes(timeline: Timeline, day: Day): Float64Array {
  const hours = new Float64Array(24).fill(60);
  if (day.minutes !== 1440) {
    const hour = changeHour(timeline.readings, day);
    hours[hour] = hours[hour]! + day.minutes - 1440;
  }
  return hours;
}

/** Minutes of a day's night. */
export function nightMinutes(timeline: Timeline, day: Day): number {
  if (day.minutes === 1440) return NIGHT_END;
  return hourMinutes(timeline, day)
    .subarray(0, NIGHT_END / 60)
    .reduce((sum, minutes) => sum + minutes, 0);
}

/** Seen in the readings: where the wall clock stops keeping step. Without a reading to show it, 02:00 (from memory). */
function changeHour(readings: Readings, day: Day): number {
  for (let i = day.from; i < day.to; i++) {
    const elapsed = (readings.at[i]! - day.start) / 60000;
    const minute = readings.minute[i]!;
    if (Math.abs(elapsed - minute) > 15) return Math.min(23, Math.floor(Math.min(elapsed, minute) / 60));
  }
  return 2;
}

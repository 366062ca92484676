import type { Day, Timeline } from '../model/timeline.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS, minuteOfDay } from '../time/calendar.ts';
import { zoneClock } from '../time/zone.ts';

/** Where no reading tells, clocks are taken to change at two (common practice, no source). */
const USUAL_HOUR = 2;

/** Minutes that each clock hour of a day held: 60, but for the hour a clock change takes away or gives twice. */
export function hourMinutes(timeline: Timeline, day: Day): Float64Array {
  const hours = new Float64Array(24).fill(60);
  if (day.minutes !== 1440) {
    const hour = timeline.zone === null ? hourSeen(timeline, day) : hourOfZone(timeline.zone, day);
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

/** The hour between the two faces the clock shows at the change. A change at midnight takes the first hour. */
function hourOfZone(zone: string, day: Day): number {
  const { from, offset } = zoneClock(zone, day.start, day.start + day.minutes * MINUTE_MS);
  if (from.length < 2) return 0;
  return Math.floor(minuteOfDay(from[1]! + Math.min(offset[0]!, offset[1]!)) / 60);
}

/** Seen in the readings: between the last that keeps step with the start of the day and the first that does not. */
function hourSeen({ readings }: Timeline, day: Day): number {
  let before = 0;
  for (let i = day.from; i < day.to; i++) {
    const elapsed = (readings.at[i]! - day.start) / MINUTE_MS;
    const minute = readings.minute[i]!;
    const hour = Math.min(23, Math.floor(Math.min(elapsed, minute) / 60));
    if (Math.abs(elapsed - minute) > 15) return hour - before < 2 ? hour : Math.max(before, Math.min(USUAL_HOUR, hour));
    before = hour;
  }
  return Math.max(before, USUAL_HOUR);
}

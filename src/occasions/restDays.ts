import type { Session, UntilMorning } from '../model/occasions.ts';
import { median } from '../stats/quantile.ts';
import { DAY_MINUTES, MINUTE_MS } from '../time/calendar.ts';
import type { Signal } from './signal.ts';
import { nextSix, untilMorning } from './untilMorning.ts';

/** A day with notes and no exercise among them, from the time at which exercise usually begins. */
export interface RestDay {
  at: number;
  date: Session['date'];
  minute: number;
  untilMorning: UntilMorning;
}

/** A day without any note is no rest day: nothing is known of it. */
export function restDays(signal: Signal, sessions: readonly Session[], notedDays: ReadonlySet<string>): RestDay[] {
  if (sessions.length === 0) return [];
  const moved = new Set(sessions.map(({ date }) => date));
  const minute = Math.round(median(sessions.map((one) => one.minute)));
  return signal.timeline.days.flatMap(({ date, start, minutes }, day) => {
    if (moved.has(date) || !notedDays.has(date)) return [];
    const at = start + (minute + minutes - DAY_MINUTES) * MINUTE_MS;
    return [{ at, date, minute, untilMorning: untilMorning(signal, at, nextSix(signal.timeline, day, minute)) }];
  });
}

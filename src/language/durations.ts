import { DAY_MINUTES } from '../time/calendar.ts';
import type { Style } from './locale.ts';
import { spokenMinutes } from './shares.ts';
import type { Telling } from './telling.ts';

/** From here on minutes no longer matter: "306 hours". */
const LONG_MINUTES = 48 * 60;

/** Percent of a share: one decimal below 10, whole above; never 0 for something that happened. */
export function percentNumber(telling: Telling, share: number): string {
  const percent = share * 100;
  if (percent > 0 && percent < 0.05) return telling.fill('units.under', { value: telling.forms.number(0.1, 1) });
  // 99.6 must not be told as all of it, as long as something lay outside.
  if (percent > 99 && percent < 100) return telling.forms.number(Math.min(percent, 99.9), 1);
  // A whole number of percent, such as a goal, needs no decimal.
  const whole = Math.abs(percent - Math.round(percent)) < 1e-9;
  return telling.forms.number(percent, !whole && percent < 9.95 ? 1 : 0);
}

export function percent(telling: Telling, share: number): string {
  return telling.fill('units.percent', { value: percentNumber(telling, share) });
}

/** Whole minutes as hours and minutes; less than half a minute is told as less than 1, short for a clinic with the sign. */
export function duration(telling: Telling, minutes: number, style: Style): string {
  const length = style === 'short' ? 'short' : 'long';
  const say = (name: 'minutes' | 'hours', value: number): string =>
    telling.fill(`units.${name}.${length}`, { n: telling.forms.number(value) }, { n: value });
  if (minutes > 0 && minutes < 0.5) {
    const sign = length === 'short' && telling.voice === 'clinic';
    return telling.fill(sign ? 'units.under' : 'units.lessThan', { value: say('minutes', 1) });
  }
  if (minutes >= LONG_MINUTES) return say('hours', Math.round(minutes / 60));
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return say('minutes', rest);
  if (rest === 0) return say('hours', hours);
  return telling.fill(`units.hoursAndMinutes.${length}`, { hours: say('hours', hours), minutes: say('minutes', rest) });
}

/** A share: percent for the clinic, time a day for the person whose days they are. */
export function share(telling: Telling, value: number, style: Style): string {
  if (telling.voice === 'clinic') return percent(telling, value);
  const minutes = value * DAY_MINUTES;
  const spoken = spokenMinutes(minutes);
  if (spoken === 0) return duration(telling, minutes, style);
  // Only a share of 1 is all 24 hours.
  const whole = spoken === DAY_MINUTES && value < 1;
  return duration(telling, whole ? Math.min(Math.round(minutes), DAY_MINUTES - 1) : spoken, style);
}

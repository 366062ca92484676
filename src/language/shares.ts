import type { BandMinutes } from '../model/measures.ts';
import type { Band } from '../model/targets.ts';
import { BANDS } from '../targets/bands.ts';
import { DAY_MINUTES } from '../time/calendar.ts';

const sum = (minutes: BandMinutes): number => BANDS.reduce((total, band) => total + minutes[band], 0);

/**
 * Tenths of a percent for the five bands of a stack, by largest remainder, so that what is printed sums to 100.0.
 * All 0 without readings.
 */
export function stackedTenths(minutes: BandMinutes): Record<Band, number> {
  const total = sum(minutes);
  const tenths: Record<Band, number> = { 'very-low': 0, low: 0, 'in-range': 0, high: 0, 'very-high': 0 };
  if (total <= 0) return tenths;
  const exact = BANDS.map((band) => ({ band, value: (minutes[band] / total) * 1000 }));
  let left = 1000;
  for (const { band, value } of exact) {
    tenths[band] = Math.floor(value);
    left -= tenths[band];
  }
  exact.sort((a, b) => (b.value % 1) - (a.value % 1));
  for (let i = 0; i < left; i++) tenths[exact[i % exact.length]!.band] += 1;
  return tenths;
}

/**
 * Minutes of a day as a person hears them (communication rule, ours): to 1 under 10 minutes, to 5 up to 3 hours,
 * to 15 up to 10 hours, above that to 30.
 */
export function spokenMinutes(minutes: number): number {
  const step = minutes < 10 ? 1 : minutes <= 180 ? 5 : minutes <= 600 ? 15 : 30;
  return Math.round(minutes / step) * step;
}

/**
 * The five bands as minutes of one day of 24 hours: the four outside the range rounded for speech, the range the
 * rest, so that picture and table add up. A band that rounds to 0 but was not empty is told as less than 1 minute.
 */
export function dayOf24(minutes: BandMinutes): Record<Band, number> {
  const total = sum(minutes);
  const day: Record<Band, number> = { 'very-low': 0, low: 0, 'in-range': 0, high: 0, 'very-high': 0 };
  if (total <= 0) return day;
  const outside = BANDS.filter((band) => band !== 'in-range');
  for (const band of outside) day[band] = spokenMinutes((minutes[band] / total) * DAY_MINUTES);
  const inRange = (): number => DAY_MINUTES - outside.reduce((used, band) => used + day[band], 0);
  // Rounding up several bands can eat a small range, or more than a day: the largest band gives it back.
  const least = minutes['in-range'] > 0 ? Math.min(1, (minutes['in-range'] / total) * DAY_MINUTES) : 0;
  if (inRange() < least) {
    const largest = outside.reduce((a, b) => (day[b] > day[a] ? b : a));
    day[largest] -= Math.ceil(least) - inRange();
  }
  if (minutes['in-range'] === 0) {
    // Nothing was in range, so nothing may be shown there.
    const largest = outside.reduce((a, b) => (day[b] > day[a] ? b : a));
    day[largest] += inRange();
  }
  day['in-range'] = inRange();
  return day;
}

import type { LocalDate } from '../model/glucose.ts';

/*
 * The proleptic Gregorian calendar on a clock without a zone: wall clock times are milliseconds as if UTC.
 * No zone data and no library is needed here, so a run without a zone loads none.
 */

export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;
export const DAY_MS = 86_400_000;
/** Minutes of a day on which no clock is changed. */
export const DAY_MINUTES = 1440;

/** Whether the text is a day that exists, written `YYYY-MM-DD`. */
export function isLocalDate(text: string): text is LocalDate {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const wall = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(wall) && dateOf(wall) === text;
}

/** Days and their midnights are asked for again and again, and of few days: so many are kept. */
const MOST_KEPT = 1000;
const midnights = new Map<string, number>();
const dates = new Map<number, LocalDate>();

/** Midnight at the start of a date, as a wall clock. @throws RangeError when there is no such day. */
export function midnightOf(date: string): number {
  const known = midnights.get(date);
  if (known !== undefined) return known;
  if (!isLocalDate(date)) throw new RangeError(`not a date: ${date}`);
  if (midnights.size >= MOST_KEPT) midnights.clear();
  const midnight = Date.parse(`${date}T00:00:00Z`);
  midnights.set(date, midnight);
  return midnight;
}

/** The date a wall clock shows. */
export function dateOf(wall: number): LocalDate {
  const day = Math.floor(wall / DAY_MS);
  const known = dates.get(day);
  if (known !== undefined) return known;
  const date = new Date(wall).toISOString().slice(0, 10) as LocalDate;
  if (dates.size >= MOST_KEPT) dates.clear();
  dates.set(day, date);
  return date;
}

/** Midnight before a wall clock time. */
export function midnightBefore(wall: number): number {
  return Math.floor(wall / DAY_MS) * DAY_MS;
}

/** 0 … 1439. */
export function minuteOfDay(wall: number): number {
  return Math.floor((wall - midnightBefore(wall)) / MINUTE_MS);
}

/** ISO 8601: 1 = Monday … 7 = Sunday. */
export function weekdayOf(date: string): number {
  return new Date(midnightOf(date)).getUTCDay() || 7;
}

/** The date so many days later, or earlier when negative. */
export function addDays(date: string, days: number): LocalDate {
  return dateOf(midnightOf(date) + days * DAY_MS);
}

/** Days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return (midnightOf(to) - midnightOf(from)) / DAY_MS;
}

import type { LocalDate } from '../model/glucose.ts';
import type { Episode } from '../model/measures.ts';
import { addDays, DAY_MINUTES } from '../time/calendar.ts';

export const NOON = DAY_MINUTES / 2;

/** From noon to noon, so that an evening and its night are one row. */
export interface Evening {
  date: LocalDate;
  lows: Episode[];
}

/** The evenings with a low, in order of the calendar. */
export function eveningsOf(lows: readonly Episode[]): Evening[] {
  const found = new Map<LocalDate, Episode[]>();
  for (const low of lows) {
    const date = low.startMinute < NOON ? addDays(low.date, -1) : low.date;
    found.set(date, [...(found.get(date) ?? []), low]);
  }
  return [...found].map(([date, some]) => ({ date, lows: some })).sort((a, b) => (a.date < b.date ? -1 : 1));
}

/** Those that keep a row where not all fit: a very low and a night first, then the longest. */
export function gravest(evenings: readonly Evening[], most: number): Evening[] {
  const grave = ({ lows }: Evening): number =>
    Math.max(...lows.map(({ level, night }) => (level === 2 ? 2 : Number(night))));
  const longest = ({ lows }: Evening): number => Math.max(...lows.map(({ minutes }) => minutes));
  const kept = [...evenings].sort((a, b) => grave(b) - grave(a) || longest(b) - longest(a)).slice(0, most);
  return evenings.filter((one) => kept.includes(one));
}

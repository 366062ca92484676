import type { LocalDate, MgPerDl } from '../model/glucose.ts';
import type { Evidence } from '../model/look.ts';
import type { Episode } from '../model/measures.ts';
import type { Quantity } from '../model/quantity.ts';
import { glucose, minutes } from './quantities.ts';

const DAY_MS = 86_400_000;

/** The day and the minutes of an episode; one that runs past midnight is shown to the end of the day it began on. */
export function evidenceOf(episode: Episode): Evidence {
  return {
    date: episode.date,
    fromMinute: episode.startMinute,
    toMinute: Math.min(1440, episode.startMinute + episode.minutes),
  };
}

export const daysOf = (episodes: readonly Episode[]): LocalDate[] =>
  [...new Set(episodes.map(({ date }) => date))].sort();

/** The lowest (highest) reading among episodes of one side, and the longest of them. */
export function extremes(episodes: readonly Episode[]): { extreme: Quantity; longest: Quantity; furthest: Episode } {
  const further = (a: Episode, b: Episode): Episode => {
    if (a.extreme !== b.extreme) return (a.side === 'low' ? a.extreme < b.extreme : a.extreme > b.extreme) ? a : b;
    return b.extremeLimit !== 0 && a.extremeLimit === 0 ? b : a;
  };
  const furthest = episodes.reduce(further);
  return {
    extreme: glucose(furthest.extreme, furthest.extremeLimit),
    longest: minutes(Math.max(...episodes.map((each) => each.minutes))),
    furthest,
  };
}

/**
 * A value told as a bound when an episode says that it lay beyond what the sensor shows: tables of nights and rebounds
 * keep the value alone.
 */
export function bounded(value: MgPerDl, episodes: readonly Episode[]): Quantity {
  const beyond = episodes.find(({ extreme, extremeLimit }) => extreme === value && extremeLimit !== 0);
  return glucose(value, beyond?.extremeLimit ?? 0);
}

/** Whole days from 1970 to a local day, for counting days across midnight. */
export const dayNumber = (date: LocalDate): number => Math.round(Date.parse(`${date}T00:00:00Z`) / DAY_MS);

/** Minutes of an episode that lie in a clock window, by the day the window opens on. Windows do not cross midnight. */
export function minutesInWindow(episode: Episode, fromMinute: number, toMinute: number): Map<LocalDate, number> {
  const inside = new Map<LocalDate, number>();
  const first = dayNumber(episode.date);
  const end = episode.startMinute + episode.minutes;
  for (let day = 0; day * 1440 < end; day++) {
    const from = Math.max(episode.startMinute, day * 1440 + fromMinute);
    const to = Math.min(end, day * 1440 + toMinute);
    if (to <= from) continue;
    const date = new Date((first + day) * DAY_MS).toISOString().slice(0, 10) as LocalDate;
    inside.set(date, to - from);
  }
  return inside;
}

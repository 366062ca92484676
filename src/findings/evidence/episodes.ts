import type { LocalDate } from '../../model/glucose.ts';
import type { Evidence } from '../../model/look.ts';
import type { Episode } from '../../model/measures.ts';
import type { Quantity } from '../../model/quantity.ts';
import { addDays, DAY_MS, midnightOf } from '../../time/calendar.ts';
import { count, dates, glucose, minutes, word } from './quantities.ts';

/** Every day of an episode with its minutes there; with `outer` only those on which it lay beyond the outer limit. */
export function evidenceOf(episode: Episode, outer = false): Evidence[] {
  return episode.days
    .filter(({ outerMinutes }) => !outer || outerMinutes > 0)
    .map(({ date, fromMinute, toMinute }) => ({ date, fromMinute, toMinute }));
}

/** The part of an episode on the day it began on, for what is told of beginnings. */
export const beginningOf = (episode: Episode): Evidence[] => evidenceOf(episode).slice(0, 1);

/**
 * When episodes were, each on one day, as one over midnight is one and not two; a single one that lies on several days is
 * told from the first of them to the last. With `outer` by the part beyond the outer limit.
 */
export function whenOf(
  episodes: readonly Episode[],
  outer = false,
): Record<'span' | 'days' | 'dates' | 'last', Quantity> {
  const parts = episodes.map((each) => daysOf(evidenceOf(each, outer)));
  const days = [...new Set(parts.flatMap(([first]) => first ?? []))];
  const only = parts.length === 1 ? parts[0]! : [];
  return {
    span: word(only.length > 1 ? 'through' : 'days'),
    days: count(days.length),
    dates: dates(days),
    last: dates(only.slice(-1)),
  };
}

/** Every day shown, once, in order. */
export const daysOf = (where: readonly Evidence[]): LocalDate[] => [...new Set(where.map(({ date }) => date))].sort();

/** Began before midnight, so no event of the night by the published rule (Danne 2017), yet lasted into it. */
export const runsIntoNight = ({ night, days }: Episode): boolean => !night && days.length > 1;

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

/** Whole days from 1970 to a local day, for counting days across midnight. */
export const dayNumber = (date: LocalDate): number => midnightOf(date) / DAY_MS;

/** Minutes of an episode that lie in a clock window, by the day the window opens on. Windows do not cross midnight. */
export function minutesInWindow(episode: Episode, fromMinute: number, toMinute: number): Map<LocalDate, number> {
  const inside = new Map<LocalDate, number>();
  const end = episode.startMinute + episode.minutes;
  for (let day = 0; day * 1440 < end; day++) {
    const from = Math.max(episode.startMinute, day * 1440 + fromMinute);
    const to = Math.min(end, day * 1440 + toMinute);
    if (to <= from) continue;
    inside.set(addDays(episode.date, day), to - from);
  }
  return inside;
}

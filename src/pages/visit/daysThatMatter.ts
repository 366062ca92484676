import type { Found } from '../../findings/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { DailySummary, Episode } from '../../model/measures.ts';
import { storyOf } from '../../topics/index.ts';
import type { PageContext } from '../context.ts';

/**
 * The days that carry the topic, in order of the calendar: those on which the topic or its story was seen come first, of them and of
 * the others those with a very low or a low at night, then those with a low, then those furthest from range. Ours.
 */
export function daysThatMatter({ analysis }: PageContext, days: readonly DailySummary[], most: number): DailySummary[] {
  const { found, topics, measures } = analysis;
  const story = storyOf(found, topics);
  const carried = new Set([topics[0]?.id, story].flatMap((id) => datesOf(found, id)));
  const lows = measures.lows.ok ? measures.lows.value.list : [];
  const daysOf = (some: readonly Episode[]) => new Set(some.flatMap((low) => low.days.map(({ date }) => date)));
  const grave = daysOf(lows.filter(({ level, night }) => level === 2 || night));
  const low = daysOf(lows);
  const away = ({ minutes }: DailySummary): number =>
    3 * (minutes.low + minutes['very-low']) + minutes.high + minutes['very-high'];
  const rank = (day: DailySummary): number =>
    (carried.has(day.date) ? 4 : 0) + (grave.has(day.date) ? 2 : 0) + (low.has(day.date) ? 1 : 0);
  const chosen = [...days]
    .filter(({ share }) => share > 0)
    .sort((a, b) => rank(b) - rank(a) || away(b) - away(a))
    .slice(0, most);
  return days.filter((day) => chosen.includes(day));
}

function datesOf(found: readonly Found[], id: string | undefined | null): LocalDate[] {
  const look = found.find((one) => one.id === id)?.look;
  return look?.case === 'holds' ? look.where.map(({ date }) => date) : [];
}

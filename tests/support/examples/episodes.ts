import { LONG } from '../../../src/measures/longHighs.ts';
import type { Instant } from '../../../src/model/glucose.ts';
import type { LongHighs } from '../../../src/model/highs.ts';
import type { Measured } from '../../../src/model/measured.ts';
import type * as M from '../../../src/model/measures.ts';
import { addDays, MINUTE_MS, midnightOf } from '../../../src/time/calendar.ts';
import { exampleDate, exampleEstimate, listed, mg } from './measures.ts';

/** One episode a day, from the first day on; what is given replaces the usual. */
function episodes(usual: M.Episode, given: readonly Partial<M.Episode>[]): Measured<M.Episodes> {
  const list = given.map((each, day) => {
    const episode = { ...usual, date: exampleDate(day), ...each };
    const start = (midnightOf(episode.date) + episode.startMinute * MINUTE_MS) as Instant;
    const end = (start + episode.minutes * MINUTE_MS) as Instant;
    const endMinute = (episode.startMinute + episode.minutes) % 1440;
    const night = episode.startMinute < 360;
    return { ...episode, start, end, endMinute, extremeAt: start, night, days: each.days ?? daysOf(episode) };
  });
  const level2 = list.filter(({ level }) => level === 2).length;
  const night = list.filter((each) => each.night).length;
  const rate = exampleEstimate(list.length / 2);
  const value = { list, level2, night, perWeek: rate, level2PerWeek: exampleEstimate(level2 / 2) };
  return { ok: true, value, n: list.length, of: 'episodes' };
}

/** The days an episode runs over, its minutes beyond the outer limit at its beginning. */
function daysOf({ date, startMinute, minutes, outerMinutes }: M.Episode): M.EpisodeDay[] {
  const end = startMinute + minutes;
  let left = outerMinutes;
  return listed(Math.max(1, Math.ceil(end / 1440)), (day) => {
    const fromMinute = day === 0 ? startMinute : 0;
    const toMinute = Math.min(1440, end - day * 1440);
    const outer = Math.min(left, toMinute - fromMinute);
    left -= outer;
    return { date: addDays(date, day), fromMinute, toMinute, outerMinutes: outer };
  });
}

const low: M.Episode = {
  side: 'low',
  start: 0 as Instant,
  end: 0 as Instant,
  date: exampleDate(0),
  startMinute: 600,
  endMinute: 630,
  minutes: 30,
  extreme: mg(61),
  extremeLimit: 0,
  extremeAt: 0 as Instant,
  level: 1,
  outerMinutes: 0,
  night: false,
  days: [],
  cut: { start: false, end: false },
};

export const lowsLike = (...given: Partial<M.Episode>[]): Measured<M.Episodes> => episodes(low, given);

export const highsLike = (...given: Partial<M.Episode>[]): Measured<M.Episodes> =>
  episodes({ ...low, side: 'high', extreme: mg(240), minutes: 150 }, given);

/** Those of two hours or more beyond the outer limit. */
export function longHighsLike(given: Partial<LongHighs> = {}, ...highs: Partial<M.Episode>[]): Measured<LongHighs> {
  const example = highsLike(...highs);
  const long = (example.ok ? example.value.list : []).filter(({ outerMinutes }) => outerMinutes >= LONG);
  const list = long.map((high) => ({
    high,
    minutes: high.outerMinutes,
    unbroken: high.outerMinutes,
    insulin: 0,
    basal: 0,
    food: 0,
  }));
  const most = Math.max(0, ...list.map(({ minutes }) => minutes));
  const value: LongHighs = {
    level: mg(250),
    list,
    share: 0.1,
    unbroken: most,
    mostInDay: most,
    days: 14,
    insulinDays: 5,
    basalDays: 0,
    basal: 'none',
    foodDays: 14,
    top: list.map(({ high, minutes }) => ({ date: high.date, minutes, insulin: false, basal: false, food: true })),
    ...given,
  };
  return { ok: true, value, n: list.length, of: 'episodes' };
}

export function reboundsLike(k: number, ofLows: number): Measured<M.Rebounds> {
  const lows = lowsLike(...listed(k, () => ({})));
  const list = (lows.ok ? lows.value.list : []).map((each) => ({
    low: each,
    highStart: (each.end + 40 * MINUTE_MS) as Instant,
    highDate: each.date,
    minutesAfter: 40,
    peak: mg(221),
    peakLimit: 0 as const,
  }));
  return { ok: true, value: { list, ofLows }, n: ofLows, of: 'episodes' };
}

import type { Measured } from '../model/measured.ts';
import type { DailySummary } from '../model/measures.ts';
import { deepest } from './evidence/deepest.ts';
import { daysOf, evidenceOf, extremes, runsIntoNight, whenOf } from './evidence/episodes.ts';
import { felt } from './evidence/felt.ts';
import { clock, count, dates, glucose, limit, minutes, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** The lowest reading of all, where it lies below the limit for less than 15 minutes. */
function lowestOf(daily: Measured<DailySummary[]>) {
  const seen = (daily.ok ? daily.value : []).filter(({ lowest }) => lowest !== null);
  const [first] = [...seen].sort((a, b) => a.lowest! - b.lowest!);
  return { lowest: first === undefined ? limit('very-low') : glucose(first.lowest!, first.limits.lowest) };
}

const isBrief = (day: DailySummary): boolean => day.minutes['very-low'] > 0;

/** Any very low glucose. Once is enough, and so is less than the 15 minutes that make an episode. */
export const veryLow: Finding<'very-low'> = {
  id: 'very-low',
  source: 'level 2: Battelino 2019, Diabetes Care 42:1593-1603; 15 minutes: Danne 2017, Diabetes Care 40:1631-1640',
  look(measures) {
    const { lows, timeInBands, daily, pressedLows } = measures;
    if (!lows.ok) return untold(lows.why);
    const episodes = lows.value.list.filter((each) => each.level === 2);
    const total = timeInBands.ok ? timeInBands.value.minutes['very-low'] : 0;
    if (episodes.length > 0) {
      const { extreme, longest, furthest } = extremes(episodes);
      const where = episodes.flatMap((each) => evidenceOf(each, true));
      const onDays = daysOf(where);
      const briefly = daily.ok ? daily.value.filter(isBrief).filter(({ date }) => !onDays.includes(date)).length : 0;
      return holds(
        {
          kind: word('episodes'),
          count: count(episodes.length),
          ...whenOf(episodes, true),
          briefDays: count(briefly),
          pressed: count(pressedLows.ok ? pressedLows.value.pressedVeryLows : 0),
          night: count(episodes.filter((each) => each.night).length),
          into: count(episodes.filter(runsIntoNight).length),
          lowest: extreme,
          ...deepest(measures, extreme),
          lowestDate: dates([furthest.date]),
          lowestFrom: clock(furthest.startMinute),
          longest,
          total: minutes(
            Math.max(
              total,
              episodes.reduce((sum, each) => sum + each.outerMinutes, 0),
            ),
          ),
          limit: limit('very-low'),
          ...felt(measures, ({ level }) => level === 2),
        },
        where,
        'episodes',
      );
    }
    if (total === 0) return absent;
    const days = daily.ok ? daily.value.filter(isBrief).map(({ date }) => date) : [];
    return holds(
      {
        kind: word('brief'),
        count: count(0),
        span: word('days'),
        days: count(days.length),
        dates: dates(days),
        last: dates([]),
        briefDays: count(days.length),
        pressed: count(0),
        night: count(0),
        into: count(0),
        ...lowestOf(daily),
        deeper: word('no'),
        deepest: limit('very-low'),
        deepestDate: dates([]),
        lowestDate: dates([]),
        lowestFrom: clock(0),
        longest: minutes(0),
        total: minutes(total),
        limit: limit('very-low'),
        felt: count(0),
        feltOf: count(0),
      },
      days.map((date) => ({ date })),
      'brief',
    );
  },
};

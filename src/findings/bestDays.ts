import type { DailySummary } from '../model/measures.ts';
import { daysLike } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { count, dates, often, share, word } from './quantities.ts';

/** Full days free of lows: those above the goal for time in range, or else the one with most of it. */
export const bestDays: Finding = {
  id: 'best-days',
  source: 'ours; goal and full day (70 %) Battelino 2019, Diabetes Care 42:1593-1603',
  look({ daily }, { goals }) {
    if (!daily.ok) return untold(daily.why);
    const full = daily.value.filter((day) => day.full && day.inRange !== null);
    if (full.length === 0) return untold('too-few-days');
    const calm = full.filter((day) => day.minutes['very-low'] === 0 && day.minutes.low === 0);
    if (calm.length === 0) return absent;
    const goal = goals.find(({ of }) => of === 'in-range');
    const met = goal === undefined ? [] : calm.filter((day) => day.inRange! > goal.share);
    const top = calm.reduce((a, b) => (b.inRange! > a.inRange! ? b : a));
    const named: DailySummary[] = met.length > 0 ? met : [top];
    return holds(
      {
        kind: word(met.length > 0 ? 'goal' : 'top'),
        often: often(named.length, full.length, 'days'),
        count: count(named.length),
        days: count(full.length),
        dates: dates(named.map(({ date }) => date)),
        top: dates([top.date]),
        share: share(top.inRange!),
        goal: share(goal?.share ?? 0),
      },
      named.map(({ date }) => ({ date })),
      met.length > 0 ? 'goal' : 'top',
    );
  },
  examples: [
    ['2 of 3 days above the goal', { daily: daysLike([0.71, 0.7, 0.9]) }, 'holds'],
    ['none above the goal', { daily: daysLike([0.7, 0.5]) }, 'holds'],
    [
      'every day with a low',
      { daily: daysLike([0.9], { minutes: { 'very-low': 0, low: 15, 'in-range': 1000, high: 0, 'very-high': 0 } }) },
      'absent',
    ],
    ['no full day', { daily: daysLike([0.9], { full: false }) }, 'untold'],
  ],
};

import type { DailySummary } from '../model/measures.ts';
import { count, dates, often, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** A day with less of it in range than this is not named as one that went well (ours; the goal for older adults). */
const LEAST = 0.5;

/** Full days free of lows: those above the goal for time in range, or else the one with most of it when that is half of the day. */
export const bestDays: Finding<'best-days'> = {
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
    if (met.length === 0 && top.inRange! < LEAST) return absent;
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
};

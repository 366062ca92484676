import { count, dates, limit, minutes } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Readings below the low limit, but never 15 minutes on end. Those below the very low limit are told apart. */
export const briefLows: Finding<'brief-lows'> = {
  id: 'brief-lows',
  source: '15 minutes: Danne 2017, Diabetes Care 40:1631-1640; told at all: ours',
  look({ lows, timeInBands, daily, coverage }) {
    if (!lows.ok) return untold(lows.why);
    if (!timeInBands.ok) return untold(timeInBands.why);
    const { low, 'very-low': veryLow } = timeInBands.value.minutes;
    if (lows.value.list.length > 0 || low === 0 || veryLow > 0) return absent;
    const days = daily.ok ? daily.value.filter((day) => day.minutes.low > 0).map(({ date }) => date) : [];
    return holds(
      {
        total: minutes(low),
        days: count(days.length),
        dates: dates(days),
        hours: count(coverage.ok ? coverage.value.hours : 0),
        limit: limit('low'),
      },
      days.map((date) => ({ date })),
    );
  },
};

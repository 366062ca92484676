import type { LocalDate } from '../model/glucose.ts';
import type { DayWindow, Episode } from '../model/measures.ts';
import { minutesInWindow } from './evidence/episodes.ts';
import { isPattern, PATTERN_DAYS } from './evidence/pattern.ts';
import { clock, count, limit, minutes, often, share } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LONG = 120;

/** The clock window in which most days spent more than 2 hours above the high limit. */
export const highAfterWindow: Finding<'high-after-window'> = {
  id: 'high-after-window',
  source: 'ours',
  look({ highs, windows }) {
    if (!highs.ok) return untold(highs.why);
    if (!windows.ok) return untold(windows.why);
    const seen = windows.value.all.filter(({ days }) => days >= PATTERN_DAYS);
    if (seen.length === 0) return untold('too-few-days');
    const counted = seen.map((window) => ({ window, days: longDays(highs.value.list, window) }));
    const most = counted.reduce((a, b) => (rank(b) > rank(a) ? b : a));
    const n = Math.max(most.window.days, most.days.length);
    if (!isPattern(most.days.length, n)) return absent;
    const { fromMinute, toMinute, high } = most.window;
    return holds(
      {
        from: clock(fromMinute),
        to: clock(toMinute),
        often: often(most.days.length, n, 'days'),
        count: count(most.days.length),
        length: minutes(LONG),
        share: share(high),
        limit: limit('high'),
      },
      most.days.map((date) => ({ date, fromMinute, toMinute })),
    );
  },
};

interface Counted {
  window: DayWindow;
  days: LocalDate[];
}

/** Share of days first, time high between equals. */
const rank = ({ window, days }: Counted): number => days.length / window.days + window.high / 1000;

function longDays(highs: readonly Episode[], { fromMinute, toMinute }: DayWindow): LocalDate[] {
  const byDay = new Map<LocalDate, number>();
  for (const high of highs) {
    for (const [date, spent] of minutesInWindow(high, fromMinute, toMinute)) {
      byDay.set(date, (byDay.get(date) ?? 0) + spent);
    }
  }
  return [...byDay]
    .filter(([, spent]) => spent > LONG)
    .map(([date]) => date)
    .sort();
}

import type { LocalDate } from '../model/glucose.ts';
import type { DayWindow, Episode } from '../model/measures.ts';
import { highsLike } from './episodeExamples.ts';
import { minutesInWindow } from './episodes.ts';
import { windowsLike } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { isPattern, PATTERN_DAYS } from './pattern.ts';
import { clock, count, limit, minutes, often, share } from './quantities.ts';

const LONG = 120;

/** The clock window in which most days spent more than 2 hours above the high limit. */
export const highAfterWindow: Finding = {
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
  examples: [
    ['3 of 9 evenings, 121 minutes', evenings(9, 121, 121, 121), 'holds'],
    ['one of the 3 only 120 minutes', evenings(9, 121, 121, 120), 'absent'],
    ['3 of 10 evenings', evenings(10, 121, 121, 121), 'absent'],
    ['6 days', evenings(6, 121, 121, 121), 'untold'],
  ],
};

function evenings(days: number, ...lengths: number[]) {
  return {
    highs: highsLike(...lengths.map((length) => ({ startMinute: 1090, minutes: length }))),
    windows: windowsLike(days, 0),
  };
}

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

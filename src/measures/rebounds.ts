import type { Instant } from '../model/glucose.ts';
import type { Rebounds } from '../model/measures.ts';
import { HIGH } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { type Context, heightAt, liesFurther, limitAt } from './context.ts';
import type { Course } from './course.ts';
import { episode } from './episodes.ts';
import type { Measure } from './measure.ts';

/** Minutes after a low in which a high is told beside it. */
export const WITHIN = 120;

/** Highs that start within 120 minutes of the end of a low. An order in time, not a cause. */
export const rebounds: Measure<'rebounds'> = {
  id: 'rebounds',
  source: 'Acciaroli 2022, J Diabetes Sci Technol 16:677-682',
  needs: { readings: 1 },
  definition: { withinMinutes: WITHIN, seenShare: SEEN_SHARE },
  compute(shared) {
    const list: Rebounds['list'] = [];
    let ofLows = 0;
    const lows = shared.lows();
    lows.forEach((low, i) => {
      const after = lookAfter(shared, low, lows[i + 1]);
      if (after.seen) ofLows++;
      if (after.high >= 0) list.push(rebound(shared, low, after.high));
    });
    return { ok: true, value: { list, ofLows }, n: ofLows, of: 'episodes' };
  },
};

/** First high reading after a low and before the next low, and whether enough of the time after it was seen. */
function lookAfter(
  { timeline, bands }: Context,
  low: Course,
  next: Course | undefined,
): { seen: boolean; high: number } {
  const { at, weight, count } = timeline.readings;
  const until = Math.min(low.end + WITHIN * MINUTE_MS, next ? next.start : Number.POSITIVE_INFINITY);
  let minutes = 0;
  for (let i = low.last + 1; i < count && at[i]! <= until; i++) {
    if (bands[i]! >= HIGH) return { seen: true, high: i };
    minutes += weight[i]!;
  }
  return { seen: minutes >= (SEEN_SHARE * (until - low.end)) / MINUTE_MS, high: -1 };
}

function rebound(shared: Context, low: Course, high: number): Rebounds['list'][number] {
  const { timeline, bands } = shared;
  const { at, count, day } = timeline.readings;
  let peak = high;
  for (let i = high; i < count && bands[i]! >= HIGH; i++) {
    if (i > high && at[i]! - at[i - 1]! > timeline.gapMinutes * MINUTE_MS) break;
    if (liesFurther(shared, 'high', i, peak)) peak = i;
  }
  return {
    low: episode(shared, 'low', low),
    highStart: at[high]! as Instant,
    highDate: timeline.days[day[high]!]!.date,
    minutesAfter: (at[high]! - low.end) / MINUTE_MS,
    peak: heightAt(shared, peak),
    peakLimit: limitAt(shared, peak),
  };
}

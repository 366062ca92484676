import type { Night } from '../model/measures.ts';
import { LOW, VERY_LOW } from '../targets/bands.ts';
import { NIGHT_END, SEEN_SHARE } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { type Context, heightAt, liesFurther, limitAt } from './context.ts';
import { nightMinutes } from './hourMinutes.ts';
import type { Measure } from './measure.ts';

/**
 * The nights one by one. Any reading below the low limit makes a night a low one, however little of it was seen;
 * "none seen" asks for 70 % of the night.
 */
export const nights: Measure<'nights'> = {
  id: 'nights',
  source: 'Danne 2017, Diabetes Care 40:1631-1640; Daybands',
  needs: { readings: 1 },
  definition: { fromMinute: 0, toMinute: NIGHT_END, seenShare: SEEN_SHARE },
  compute(shared) {
    const value = shared.timeline.days.map((_, day) => oneNight(shared, day));
    return { ok: true, value, n: value.length, of: 'nights' };
  },
};

/** How each night of the period went. */
export const nightStates = (shared: Context): Night['state'][] =>
  shared.timeline.days.map((_, day) => oneNight(shared, day).state);

function oneNight(shared: Context, index: number): Night {
  const { timeline, bands } = shared;
  const { minute, weight: weights } = timeline.readings;
  const day = timeline.days[index]!;
  let minutes = 0;
  let veryLowMinutes = 0;
  let lowMinutes = 0;
  let highMinutes = 0;
  let lowest = -1;
  let last = -1;
  for (let i = day.from; i < day.to; i++) {
    // No break: a clock that went back over midnight shows the evening again before the rest of the night.
    if (minute[i]! >= NIGHT_END) continue;
    const weight = weights[i]!;
    const band = bands[i]!;
    minutes += weight;
    if (band === VERY_LOW) veryLowMinutes += weight;
    if (band <= LOW) lowMinutes += weight;
    if (band > LOW + 1) highMinutes += weight;
    if (lowest < 0 || liesFurther(shared, 'low', i, lowest)) lowest = i;
    last = i;
  }
  const share = Math.min(1, minutes / nightMinutes(timeline, day));
  return {
    date: day.date,
    share,
    outside:
      minutes === 0 &&
      (index <= shared.timeline.readings.day[0]! ||
        index > shared.timeline.readings.day[shared.timeline.readings.count - 1]!),
    state: veryLowMinutes > 0 ? 'very-low' : lowMinutes > 0 ? 'low' : share >= SEEN_SHARE ? 'none-seen' : 'unknown',
    lowMinutes,
    veryLowMinutes,
    highMinutes,
    lowest: lowest < 0 ? null : heightAt(shared, lowest),
    lowestLimit: lowest < 0 ? 0 : limitAt(shared, lowest),
    lowestMinute: lowest < 0 ? null : minute[lowest]!,
    longestLow: last < 0 ? 0 : longestLow(shared, day.from, last),
  };
}

/** Minutes of the longest low episode that has a reading in the night. */
function longestLow(shared: Context, first: number, last: number): number {
  let longest = 0;
  for (const low of shared.lows()) {
    if (low.last >= first && low.first <= last) longest = Math.max(longest, (low.end - low.start) / MINUTE_MS);
  }
  return longest;
}

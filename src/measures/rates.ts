import type { Rates } from '../model/trust.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import { heightAt, limitAt } from './context.ts';
import type { Measure } from './measure.ts';

/** Minutes over which a slope is taken. */
export const WINDOW = 20;
const LEAST_READINGS = 4;

/**
 * How fast glucose moves: the least-squares slope of the readings of 20 minutes, at least 4 of them; no gap fits between.
 * Bands of 1, 2 and 3 mg/dL a minute are widely used (from memory). No arrows: their meaning differs between systems.
 * The largest fall is that between any two readings of such 20 minutes, so that no larger one stands on the same paper.
 */
export const rates: Measure<'rates'> = {
  id: 'rates',
  source: '{bands-from-memory}; Daybands',
  needs: { readings: LEAST_READINGS },
  definition: { minutes: WINDOW, readings: LEAST_READINGS },
  compute(shared) {
    const { timeline, heights } = shared;
    const { at, count, day, minute } = timeline.readings;
    const falling = { over1: 0, over2: 0, over3: 0 };
    const rising = { over1: 0, over2: 0, over3: 0 };
    let slopes = 0;
    let steep = 0;
    let steepFrom = -1;
    let steepTo = -1;
    let first = 0;
    let fall = 0;
    let fallFrom = -1;
    let fallTo = -1;
    for (let i = 0; i < count; i++) {
      while (at[i]! - at[first]! > WINDOW * MINUTE_MS + 30_000) first++;
      const n = i - first + 1;
      if (n < LEAST_READINGS || at[i]! - at[first]! < 0.7 * WINDOW * MINUTE_MS) continue;
      let t = 0;
      let tt = 0;
      let g = 0;
      let tg = 0;
      for (let k = first + 1; k <= i; k++) {
        const minutes = (at[k]! - at[first]!) / MINUTE_MS;
        const higher = heights[k]! - heights[first]!;
        t += minutes;
        tt += minutes * minutes;
        g += higher;
        tg += minutes * higher;
      }
      for (let k = first; k < i; k++) {
        if (heights[k]! - heights[i]! <= fall) continue;
        fall = heights[k]! - heights[i]!;
        fallFrom = k;
        fallTo = i;
      }
      const slope = (n * tg - t * g) / (n * tt - t * t);
      slopes++;
      const side = slope < 0 ? falling : rising;
      const rate = Math.abs(slope);
      if (rate > 1) side.over1++;
      if (rate > 2) side.over2++;
      if (rate > 3) side.over3++;
      if (slope < steep) {
        steep = slope;
        steepFrom = first;
        steepTo = i;
      }
    }
    if (slopes === 0) return { ok: false, why: 'too-few-readings' };
    for (const side of [falling, rising]) for (const over of ['over1', 'over2', 'over3'] as const) side[over] /= slopes;
    const steepest: Rates['steepest'] =
      steepFrom < 0
        ? null
        : {
            rate: steep,
            date: timeline.days[day[steepFrom]!]!.date,
            minute: minute[steepFrom]!,
            from: mgPerDl(heights[steepFrom]!),
            to: mgPerDl(heights[steepTo]!),
          };
    const largest: Rates['largest'] =
      fallFrom < 0
        ? null
        : {
            date: timeline.days[day[fallFrom]!]!.date,
            minute: minute[fallFrom]!,
            minutes: (at[fallTo]! - at[fallFrom]!) / MINUTE_MS,
            from: heightAt(shared, fallFrom),
            to: heightAt(shared, fallTo),
            limits: { from: limitAt(shared, fallFrom), to: limitAt(shared, fallTo) },
          };
    return { ok: true, value: { falling, rising, steepest, largest }, n: slopes, of: 'readings' };
  },
};

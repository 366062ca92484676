import type { LowsLined, Stretch } from '../model/readingOrders.ts';
import { once } from '../once.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';

/** Where a reading lies, with the minutes and the lows met there so far. */
type Place = Pick<Stretch, 'hours' | 'lows'>;

const BEDTIME = 1380;
/** Hours after exercise and after bedtime at which a stretch ends (ours; lows follow exercise for up to a day). */
const AFTER_EXERCISE = [4, 8, 12, 24] as const;
const AFTER_BEDTIME = [2, 4, 6, 8] as const;

/** Lows lined up on exercise (during it, and since the one noted last ended) and on bedtime, each beside the hours with readings in which it could begin. */
export const lowsLined: Measure<'lowsLined'> = {
  id: 'lowsLined',
  source: 'McMahon 2007, J Clin Endocrinol Metab 92:963-968 (that lows come late after exercise); Daybands',
  needs: { readings: 1 },
  definition: { bedtime: BEDTIME },
  compute(shared) {
    const { at, minute, weight, count } = shared.timeline.readings;
    const exercise = stretches(AFTER_EXERCISE);
    const bedtime = stretches(AFTER_BEDTIME);
    const without = { lows: 0, hours: 0 };
    const during = { lows: 0, hours: 0 };
    const sessions = sessionsOf(shared);
    const ends = sessions.map(({ end }) => end).sort((a, b) => a - b);
    const lows = shared.lows();
    const begins = new Uint8Array(count);
    for (const { first } of lows) begins[first] = 1;
    const placeSince = (now: number, last: number | undefined): Place => {
      if (sessions.length > 0 && sessions.some(({ start, end }) => now >= start && now < end)) return during;
      if (last === undefined) return without;
      const since = (now - last) / (60 * MINUTE_MS);
      return exercise.find(({ from, to }) => since >= from && since < to) ?? without;
    };
    const place = sinceBedtime();
    let next = 0;
    const put = (place: Place, i: number): void => {
      place.hours += weight[i]!;
      place.lows += begins[i]!;
    };
    for (let i = 0; i < count; i++) {
      while (next < ends.length && ends[next]! <= at[i]!) next++;
      put(placeSince(at[i]!, ends[next - 1]), i);
      const night = place[minute[i]!]!;
      if (night >= 0) put(bedtime[night]!, i);
    }
    // Minutes were summed: they are whole more often than hours are.
    for (const each of [...exercise, ...bedtime, during, without]) each.hours /= 60;
    const value: LowsLined = { during, exercise, bedtime, without };
    return { ok: true, value, n: lows.length, of: 'episodes' };
  },
};

/** The stretch after bedtime in which each minute of the day lies, -1 for none: asked for every reading of everyone. */
const sinceBedtime = once(() =>
  Int8Array.from({ length: 1440 }, (_, clock) =>
    stretches(AFTER_BEDTIME).findIndex(({ from, to }) => within((clock - BEDTIME + 1440) % 1440, from, to)),
  ),
);

const within = (minutes: number, from: number, to: number): boolean => minutes >= from * 60 && minutes < to * 60;

const stretches = (ends: readonly number[]): Stretch[] =>
  ends.map((to, i) => ({ from: i === 0 ? 0 : ends[i - 1]!, to, lows: 0, hours: 0 }));

/** Sessions noted; one without a length ends where it began. */
function sessionsOf(shared: Context): { start: number; end: number }[] {
  return shared.occasions().sessions.map(({ at, minutes }) => ({ start: at, end: at + (minutes ?? 0) * MINUTE_MS }));
}

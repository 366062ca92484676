import { WEEK } from '../comparing/statistics.ts';
import type { Instant } from '../model/glucose.ts';
import type { Estimate, Measured } from '../model/measured.ts';
import type { Episode, EpisodeDay, Episodes } from '../model/measures.ts';
import { noneCountedUpper } from '../stats/poisson.ts';
import { VERY_HIGH, VERY_LOW } from '../targets/bands.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { type Context, heightAt, liesFurther, limitAt } from './context.ts';
import { type Course, EPISODE_MINUTES } from './course.ts';
import { estimate, fullDays, INTERVAL_DAYS, LEVEL } from './estimate.ts';
import type { Measure } from './measure.ts';

const definition = { minutesToStart: EPISODE_MINUTES, minutesToEnd: EPISODE_MINUTES, nightEnd: NIGHT_END };
const source = 'Danne 2017, Diabetes Care 40:1631-1640; Daybands';

/** Lows: 15 minutes below the low limit until 15 minutes back at or above it. */
export const lows: Measure<'lows'> = {
  id: 'lows',
  source,
  needs: { readings: 1 },
  definition,
  compute: (shared) => episodes(shared, 'low', shared.lows()),
};

/** Highs: 15 minutes above the high limit until 15 minutes back at or below it. */
export const highs: Measure<'highs'> = {
  id: 'highs',
  source,
  needs: { readings: 1 },
  definition,
  compute: (shared) => episodes(shared, 'high', shared.highs()),
};

function episodes(shared: Context, side: Episode['side'], courses: Course[]): Measured<Episodes> {
  const { readings, days } = shared.timeline;
  const list = courses.map((course) => episode(shared, side, course));
  const perDay = new Float64Array(days.length);
  const level2PerDay = new Float64Array(days.length);
  list.forEach((each, i) => {
    const day = readings.day[courses[i]!.first]!;
    perDay[day] = perDay[day]! + WEEK;
    if (each.level === 2) level2PerDay[day] = level2PerDay[day]! + WEEK;
  });
  return {
    ok: true,
    value: {
      list,
      level2: list.filter((each) => each.level === 2).length,
      night: list.filter((each) => each.night).length,
      perWeek: rate(shared, perDay),
      level2PerWeek: rate(shared, level2PerDay),
    },
    n: list.length,
    of: 'episodes',
  };
}

/** One course as people speak of it. */
export function episode(shared: Context, side: Episode['side'], course: Course): Episode {
  const { readings, days, interval } = shared.timeline;
  const extreme = extremeOf(shared, side, course);
  const day = readings.day[course.first]!;
  const startMinute = readings.minute[course.first]!;
  // Where the next reading ends it, its own clock counts; a cut end lies one interval after the last reading.
  const ender = course.cutEnd ? course.last : course.last + 1;
  const later = course.cutEnd ? Math.round(readings.weight[course.last] ?? interval) : 0;
  return {
    side,
    start: course.start as Instant,
    end: course.end as Instant,
    date: days[day]!.date,
    startMinute,
    endMinute: (readings.minute[ender]! + later) % 1440,
    // Three readings stand for 15 minutes, also where the next one came a little early: no low is told as shorter than its rule.
    minutes: Math.max(EPISODE_MINUTES, (course.end - course.start) / MINUTE_MS),
    extreme: heightAt(shared, extreme),
    extremeLimit: limitAt(shared, extreme),
    extremeAt: readings.at[extreme]! as Instant,
    level: course.level2 ? 2 : 1,
    outerMinutes: course.outerMinutes,
    night: startMinute < NIGHT_END,
    days: daysOf(shared, side, course),
    cut: { start: course.cutStart, end: course.cutEnd },
  };
}

/** What of a course lies on each local day, by the day of its readings: an end just after midnight touches no new day. */
function daysOf({ bands, timeline }: Context, side: Episode['side'], course: Course): EpisodeDay[] {
  const { day, minute, weight } = timeline.readings;
  const outer = side === 'low' ? VERY_LOW : VERY_HIGH;
  const found: EpisodeDay[] = [];
  let last = -1;
  for (let i = course.first; i <= course.last; i++) {
    let here = found[found.length - 1];
    if (!here || day[i] !== last) {
      last = day[i]!;
      if (here) here.toMinute = 1440;
      here = { date: timeline.days[last]!.date, fromMinute: here ? 0 : minute[i]!, toMinute: 0, outerMinutes: 0 };
      found.push(here);
    }
    here.toMinute = Math.min(1440, minute[i]! + weight[i]!);
    if (bands[i] === outer) here.outerMinutes += weight[i]!;
  }
  return found;
}

/** The first of the lowest (highest) readings; at the same height one at the sensor's limit lies further out. */
function extremeOf(shared: Context, side: Episode['side'], course: Course): number {
  let best = course.first;
  for (let i = course.first + 1; i <= course.last; i++) if (liesFurther(shared, side, i, best)) best = i;
  return best;
}

/** None counted still leaves room for some: the exact Poisson bound for the weeks seen, instead of no interval. */
function rate(shared: Context, perDay: Float64Array): Estimate {
  const seen = estimate(shared, perDay, shared.dayMinutes, 'positive');
  if (seen.value > 0 || fullDays(shared) < INTERVAL_DAYS) return seen;
  const weeks = shared.dayMinutes.reduce((sum, minutes) => sum + minutes, 0) / WEEK;
  return { ...seen, low: 0, high: noneCountedUpper(LEVEL) / weeks, method: 'exact-poisson' };
}

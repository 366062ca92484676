import type { NoteKind } from '../model/input.ts';
import type { PressedLow } from '../model/trust.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Context } from './context.ts';
import { type Course, lastsLong } from './course.ts';
import { episode } from './episodes.ts';
import type { Measure } from './measure.ts';

const FROM = 1320;
const TO = 480;
const LEAST_CHANGE = 25;
const WITHIN = 15;
const LONGEST = 120;
/** Who writes something down, or moves, is not lying asleep on the sensor (ours). Alarms and sensors write by themselves. */
const AWAKE_BEFORE = 60;
const AWAKE: readonly NoteKind[] = ['meal', 'insulin', 'exercise', 'medication', 'fingerstick', 'text'];

/**
 * Lows that look like somebody lying on the sensor: between 22:00 and 08:00, up to two hours long, with a fall of 25 mg/dL
 * or more within 15 minutes going in and as much coming out, and nothing noted from an hour before it to its end. The rule is
 * ours; such a low may be real, and stays counted.
 */
export const pressedLows: Measure<'pressedLows'> = {
  id: 'pressedLows',
  source: 'Daybands ({pressure-from-memory})',
  needs: { readings: 1 },
  definition: {
    from: FROM,
    to: TO,
    leastChange: LEAST_CHANGE,
    within: WITHIN,
    longest: LONGEST,
    awakeBefore: AWAKE_BEFORE,
  },
  compute(shared) {
    const courses = shared.lows();
    const list = courses.flatMap((course) => pressed(shared, course) ?? []);
    const nightOf = (course: Course) => episode(shared, 'low', course).night;
    return {
      ok: true,
      value: {
        list,
        lows: courses.length,
        nightLows: courses.filter(nightOf).length,
        veryLows: courses.filter(({ longestOuter }) => lastsLong(longestOuter)).length,
        pressedVeryLows: list.filter(({ low }) => low.level === 2).length,
      },
      n: courses.length,
      of: 'episodes',
    };
  },
};

function pressed(shared: Context, course: Course): PressedLow | null {
  const { minute } = shared.timeline.readings;
  const started = minute[course.first]!;
  if (started >= TO && started < FROM) return null;
  if (course.cutStart || course.cutEnd || course.end - course.start > LONGEST * MINUTE_MS) return null;
  if (awake(shared, course)) return null;
  const fall = steepest(shared, course.first, -1);
  const back = steepest(shared, course.last, 1);
  if (fall < LEAST_CHANGE || back < LEAST_CHANGE) return null;
  return { low: episode(shared, 'low', course), fall, back };
}

function awake({ timeline }: Context, { start, end }: Course): boolean {
  return timeline.notes.some(
    ({ kind, timed, at }) => timed && AWAKE.includes(kind) && at >= start - AWAKE_BEFORE * MINUTE_MS && at <= end,
  );
}

/**
 * Largest difference within 15 minutes across the edge of a low: from up to 15 minutes outside it to up to 15 inside.
 * `way` -1: its beginning, 1: its end.
 */
function steepest({ timeline, heights }: Context, edge: number, way: -1 | 1): number {
  const { at, count } = timeline.readings;
  let most = 0;
  for (
    let outside = edge;
    outside >= 0 && outside < count && Math.abs(at[outside]! - at[edge]!) <= WITHIN * MINUTE_MS;
    outside += way
  ) {
    for (
      let inside = edge;
      inside >= 0 && inside < count && Math.abs(at[inside]! - at[outside]!) <= WITHIN * MINUTE_MS;
      inside -= way
    ) {
      most = Math.max(most, heights[outside]! - heights[inside]!);
    }
  }
  return most;
}

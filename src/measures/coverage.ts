import type { Coverage } from '../model/measures.ts';
import { ENOUGH_DAYS, isEnough, NIGHT_END, SEEN_SHARE } from '../targets/consensus.ts';
import type { Context } from './context.ts';
import { fullDays } from './estimate.ts';
import { hourMinutes } from './hourMinutes.ts';
import type { Measure } from './measure.ts';

/** Common practice, no source. */
const FIRST_LOOK_HOURS = 72;

/** How much of the chosen calendar days holds readings, each reading standing for its interval. */
export const coverage: Measure<'coverage'> = {
  id: 'coverage',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603',
  needs: { readings: 1 },
  definition: { enoughDays: ENOUGH_DAYS, enoughShare: SEEN_SHARE, firstLookHours: FIRST_LOOK_HOURS },
  compute(shared) {
    const { days } = shared.timeline;
    const byDay = days.map((day, d) => {
      const share = shared.dayShares[d]!;
      return { date: day.date, share, hours: (share * day.minutes) / 60 };
    });
    const hours = hoursSeen(shared);
    const ofHours = hoursOf(shared);
    const daysWithReadings = shared.dayMinutes.reduce((sum, minutes) => sum + (minutes > 0 ? 1 : 0), 0);
    const share = hours / ofHours;
    const clock = clockShares(shared);
    const value: Coverage = {
      share,
      hours,
      ofHours,
      ...clock,
      byDay,
      daysWithReadings,
      fullDays: fullDays(shared),
      enough: enoughSeen(shared),
      reached72h: hours >= FIRST_LOOK_HOURS,
      wholeDay: hours >= FIRST_LOOK_HOURS && clock.night.share >= share / 2,
      missing: missing(shared),
    };
    return { ok: true, value, n: daysWithReadings, of: 'days' };
  },
};

export const enoughSeen = (shared: Context): boolean =>
  isEnough(shared.timeline.days.length, hoursSeen(shared) / hoursOf(shared));

const hoursOf = ({ timeline }: Context): number => timeline.days.reduce((sum, day) => sum + day.minutes, 0) / 60;

/** Hours with readings, no day counting for more than it has. */
export function hoursSeen({ timeline, dayShares }: Context): number {
  return timeline.days.reduce((sum, day, d) => sum + (dayShares[d]! * day.minutes) / 60, 0);
}

function clockShares({ timeline }: Context): Pick<Coverage, 'byHour' | 'night'> {
  const { count, minute, weight } = timeline.readings;
  const seen = new Float64Array(24);
  const held = new Float64Array(24);
  for (let i = 0; i < count; i++) {
    const hour = (minute[i]! / 60) | 0;
    seen[hour] = seen[hour]! + weight[i]!;
  }
  for (const day of timeline.days) {
    hourMinutes(timeline, day).forEach((minutes, hour) => {
      held[hour] = held[hour]! + minutes;
    });
  }
  const byHour = Array.from(seen, (minutes, hour) => (held[hour]! > 0 ? Math.min(1, minutes / held[hour]!) : 0));
  let nightSeen = 0;
  let nightHeld = 0;
  for (let hour = 0; hour < NIGHT_END / 60; hour++) {
    nightSeen += byHour[hour]! * held[hour]!;
    nightHeld += held[hour]!;
  }
  return { byHour, night: { share: nightSeen / nightHeld, hours: nightSeen / 60, ofHours: nightHeld / 60 } };
}

function missing({ timeline }: Context): Coverage['missing'] {
  const minutes = { hole: 0, change: 0, edge: 0 };
  for (const gap of timeline.gaps) minutes[gap.kind] += gap.minutes;
  return minutes;
}

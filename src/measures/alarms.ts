import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Course } from './course.ts';
import type { Measure } from './measure.ts';

const BEFORE = 15;
const FAR = 60;

/** Alarms that were written down: how many a night, and whether a low that was seen stands near. */
export const alarms: Measure<'alarms'> = {
  id: 'alarms',
  source: 'Daybands',
  needs: {},
  definition: { before: BEFORE, far: FAR, nightEnd: NIGHT_END },
  compute(shared) {
    const { timeline } = shared;
    const noted = timeline.notes.filter(({ kind, timed }) => kind === 'alarm' && timed);
    if (noted.length === 0) return { ok: false, why: 'none-noted' };
    const lows = shared.lows();
    const duringLow = (at: number, { start, end }: Course) => at >= start - BEFORE * MINUTE_MS && at <= end;
    const around = (at: number, { start, end }: Course) => at >= start - FAR * MINUTE_MS && at <= end + FAR * MINUTE_MS;
    const perNight = new Map<number, number>();
    for (const { day, minute } of noted) if (minute < NIGHT_END) perNight.set(day, (perNight.get(day) ?? 0) + 1);
    return {
      ok: true,
      value: {
        noted: noted.length,
        days: new Set(noted.map(({ day }) => day)).size,
        nights: [...perNight].map(([day, count]) => ({ date: timeline.days[day]!.date, alarms: count })),
        lowsWith: lows.filter((low) => noted.some(({ at }) => duringLow(at, low))).length,
        lows: lows.length,
        withoutLow: noted.filter(({ at }) => !lows.some((low) => around(at, low))).length,
      },
      n: noted.length,
      of: 'notes',
    };
  },
};

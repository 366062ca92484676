import type { Instant } from '../model/glucose.ts';
import type { Timeline } from '../model/timeline.ts';
import type { DayOfSensor, SensorWorn } from '../model/trust.ts';
import { firstFrom } from '../stats/sorted.ts';
import { IN_RANGE, LOW } from '../targets/bands.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';

/**
 * The sensors one after another, and their days of wear. A start is seen where a pause for a change comes before it; the
 * sensor worn when the period opens has no seen start and no day of wear. The first 24 hours are day 1.
 */
export const sensors: Measure<'sensors'> = {
  id: 'sensors',
  source: 'Daybands',
  needs: { readings: 1 },
  definition: { firstDayHours: 24 },
  compute(shared) {
    const { timeline } = shared;
    const worn = wornIn(timeline);
    return { ok: true, value: { worn, byDay: byDay(shared, worn) }, n: timeline.readings.count, of: 'readings' };
  },
};

function wornIn({ spells, gaps, days }: Timeline): SensorWorn[] {
  return spells.map((spell) => {
    const before = gaps.find((gap) => gap.kind === 'change' && gap.to === spell.from);
    const day = days.findLast(({ start }) => start <= spell.from)!;
    return {
      from: spell.from,
      to: spell.to,
      date: day.date,
      interval: spell.interval,
      readings: spell.count,
      begun: before !== undefined,
      pauseMinutes: before?.minutes ?? null,
    };
  });
}

/** Hours since the sensor worn at an instant gave its first reading; null where that start is not seen. */
export function hoursWorn(timeline: Timeline, at: Instant): number | null {
  const worn = wornIn(timeline).findLast(({ from }) => from <= at);
  return worn?.begun ? (at - worn.from) / HOUR_MS : null;
}

function byDay({ timeline, bands }: Context, worn: SensorWorn[]): DayOfSensor[] {
  const { at, mgdl, weight, count } = timeline.readings;
  const days: {
    sensors: number;
    held: number;
    seen: number;
    known: number;
    sum: number;
    low: number;
    inRange: number;
  }[] = [];
  for (const sensor of worn) {
    if (!sensor.begun) continue;
    const worn = sensor.to - sensor.from;
    for (let d = 0; d * DAY_MS <= worn; d++) {
      days[d] ??= { sensors: 0, held: 0, seen: 0, known: 0, sum: 0, low: 0, inRange: 0 };
      days[d]!.sensors++;
      // Its last reading stands for an interval as well.
      days[d]!.held += Math.min(DAY_MS / MINUTE_MS, (worn - d * DAY_MS) / MINUTE_MS + sensor.interval);
    }
    for (let i = firstFrom(at, count, sensor.from); i < count && at[i]! <= sensor.to; i++) {
      const cell = days[Math.floor((at[i]! - sensor.from) / DAY_MS)]!;
      cell.seen += weight[i]!;
      if (bands[i]! <= LOW) cell.low += weight[i]!;
      if (bands[i] === IN_RANGE) cell.inRange += weight[i]!;
      if (Number.isNaN(mgdl[i]!)) continue;
      cell.known += weight[i]!;
      cell.sum += mgdl[i]! * weight[i]!;
    }
  }
  return days.map(({ sensors, held, seen, known, sum, low, inRange }, d) => ({
    day: d + 1,
    sensors,
    share: Math.min(1, seen / held),
    mean: known > 0 ? mgPerDl(sum / known) : null,
    low: seen > 0 ? low / seen : 0,
    inRange: seen > 0 ? inRange / seen : 0,
  }));
}

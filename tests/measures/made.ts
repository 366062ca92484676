import type { GlucoseUnit, Instant, LocalDate } from '../../src/model/glucose.ts';
import type { NoteEntry } from '../../src/model/input.ts';
import type { Gap, Note, Timeline } from '../../src/model/timeline.ts';
import { MGDL_PER_MMOL } from '../../src/units.ts';

const DAY = 86400000;
const MINUTE = 60000;

/** Midnight at which made timelines begin: an ordinary Monday. */
export const MONDAY = Date.UTC(2024, 4, 6);

/** A reading at so many minutes after that midnight, in the unit of the timeline. */
export interface Made {
  minute: number;
  value: number;
  limit?: -1 | 0 | 1;
}

/** Values at an even step, from `from` minutes on. null leaves a slot empty. */
export function series(values: readonly (number | null)[], step = 5, from = 0): Made[] {
  return values.flatMap((value, i) => (value === null ? [] : [{ minute: from + i * step, value }]));
}

/** A timeline without a zone, made straight from readings: for tests of measures alone. */
export function made(
  readings: readonly Made[],
  options: { step?: number; unit?: GlucoseUnit; days?: number; meals?: number[] } = {},
): Timeline {
  const { step = 5, unit = 'mg/dL' } = options;
  const count = readings.length;
  const lastDay = Math.floor((readings.at(-1)?.minute ?? 0) / 1440);
  const days = options.days ?? lastDay + 1;
  const factor = unit === 'mmol/L' ? MGDL_PER_MMOL : 1;
  const column = (of: (reading: Made) => number) => Float64Array.from(readings, of);
  const gapMinutes = Math.max(20, 2 * step);
  return {
    zone: null,
    unit,
    from: date(0),
    to: date(days - 1),
    chosenBy: 'default',
    days: Array.from({ length: days }, (_, day) => ({
      date: date(day),
      weekday: (day % 7) + 1,
      start: (MONDAY + day * DAY) as Instant,
      minutes: 1440,
      from: readings.filter((reading) => reading.minute < day * 1440).length,
      to: readings.filter((reading) => reading.minute < (day + 1) * 1440).length,
    })),
    readings: {
      count,
      at: column((reading) => MONDAY + reading.minute * MINUTE),
      mgdl: column((reading) => reading.value * factor),
      native: column((reading) => reading.value),
      unit: new Uint8Array(count).fill(unit === 'mmol/L' ? 1 : 0),
      limit: Int8Array.from(readings, (reading) => reading.limit ?? 0),
      day: Uint16Array.from(readings, (reading) => Math.floor(reading.minute / 1440)),
      minute: Uint16Array.from(readings, (reading) => Math.floor(reading.minute % 1440)),
      weight: new Float64Array(count).fill(step),
    },
    notes: (options.meals ?? []).map(meal),
    gaps: gaps(readings, step, gapMinutes, days),
    spells: [],
    interval: step,
    gapMinutes,
    mixed: false,
    allDays: [],
    issues: [],
  };
}

function date(day: number): LocalDate {
  return new Date(MONDAY + day * DAY).toISOString().slice(0, 10) as LocalDate;
}

function meal(minute: number): Note {
  const entry: NoteEntry = {
    wall: MONDAY + minute * MINUTE,
    offset: 0,
    kind: 'meal',
    timed: true,
    origin: { file: 'made', line: 1 },
    row: 0,
  };
  return { ...entry, at: entry.wall as Instant, day: Math.floor(minute / 1440), minute: minute % 1440 };
}

function gaps(readings: readonly Made[], step: number, longest: number, days: number): Gap[] {
  const edges = [...readings.map((reading) => reading.minute), days * 1440];
  return edges.flatMap((to, i) => {
    const from = i === 0 ? 0 : edges[i - 1]! + step;
    const minutes = to - from;
    const kind = i === 0 || i === readings.length ? 'edge' : 'hole';
    const instant = (minute: number) => (MONDAY + minute * MINUTE) as Instant;
    return minutes + step > longest ? [{ from: instant(from), to: instant(to), minutes, kind } as Gap] : [];
  });
}

import type { GlucoseUnit } from '../../src/model/glucose.ts';
import type { Timeline } from '../../src/model/timeline.ts';
import { addDays, MINUTE_MS, midnightOf } from '../../src/time/calendar.ts';
import { built, fileOf, type Row } from '../support/timeline.ts';

export const FIRST_DAY = '2026-03-02';

/** A slot of a made run: a value, a reading at the sensor's limit (NaN: unknown), or nothing. */
export type Slot = number | { native: number; limit: -1 | 1 } | null;

export interface RunOptions {
  /** Minutes between slots, default 5. */
  step?: number;
  unit?: GlucoseUnit;
  /** Minute of the first day at which the run begins. */
  from?: number;
  /** Calendar days of the period, default as many as the run needs. */
  days?: number;
}

/** The timeline of an unbroken run of slots, through the real intake. */
export function runOf(slots: readonly Slot[], options: RunOptions = {}): Timeline {
  const { step = 5, unit = 'mg/dL', from = 0 } = options;
  const rows = slots.flatMap((slot, i): Row[] => {
    if (slot === null) return [];
    const plain = typeof slot === 'number' ? { native: slot } : slot;
    return [{ wall: midnightOf(FIRST_DAY) + (from + i * step) * MINUTE_MS, unit, ...plain }];
  });
  const days = options.days ?? Math.ceil((from + slots.length * step) / 1440);
  return built([fileOf(rows)], { period: { from: FIRST_DAY, to: addDays(FIRST_DAY, days - 1) } });
}

/** The same value again and again. */
export function many(value: Slot, times: number): Slot[] {
  return new Array<Slot>(times).fill(value);
}

import * as z from 'zod';
import type { DaySums, PeriodSums } from '../model/thenAndNow.ts';
import './jitless.ts';
import { glucoseUnit, targetId } from './parts.ts';

export const SNAPSHOT_FORMAT = 'daybands-snapshot';

const amount = z.number().min(0);
const whole = z.int().min(0).max(1000);

/** The first form of a visit file, of sums of days alone. It is read for good and no longer written. */
export const snapshot = z.strictObject({
  format: z.literal(SNAPSHOT_FORMAT),
  version: z.literal(1),
  made: z.strictObject({ by: z.string().max(40), hash: z.string().max(40), on: z.iso.date() }),
  targets: targetId,
  unit: glucoseUnit,
  interval: z.number().min(0.5).max(120),
  sensors: z.int().min(0).max(1000),
  days: z
    .array(
      z.strictObject({
        date: z.iso.date(),
        length: z.number().min(1).max(3000),
        minutes: amount,
        known: amount,
        sum: amount,
        squares: amount,
        bands: z.tuple([amount, amount, amount, amount, amount]),
        lows: whole,
        veryLows: whole,
        highs: whole,
      }),
    )
    .min(1)
    .max(400),
});

/** What is wrong with sums of days, by the place of the first; null where readings can have given them. */
export function faultIn({ days }: PeriodSums): string | null {
  for (const [i, day] of days.entries()) {
    if (i > 0 && days[i - 1]!.date >= day.date) return `days.${i}.date: ${day.date}`;
    if (!consistent(day)) return `days.${i}: ${day.date}`;
  }
  return null;
}

/** Sums that no readings can have would make a change out of nothing. */
function consistent({ minutes, known, sum, squares, bands }: DaySums): boolean {
  const inBands = bands.reduce((total, each) => total + each, 0);
  const fits = (a: number, b: number) => a <= b * (1 + 1e-6) + 1e-3;
  return fits(inBands, minutes) && fits(minutes, inBands) && fits(known, minutes) && fits(sum * sum, squares * known);
}

import * as z from 'zod';
import '../jitless.ts';

const atTime = z.strictObject({ date: z.iso.date(), mgPerDl: z.number() });

export const fixedTimes = z.strictObject({
  fasting: z.array(atTime),
  bedtime: z.array(atTime),
  fastingMedianMgPerDl: z.number().nullable(),
  bedtimeMedianMgPerDl: z.number().nullable(),
});

const dosesOfDays = z.strictObject({ noted: z.number(), medianUnits: z.number() }).nullable();

export const insulinNoted = z.strictObject({
  days: z.number(),
  noted: z.number(),
  perDay: z.array(z.strictObject({ date: z.iso.date(), units: z.number(), notes: z.number() })),
  medianUnits: z.number(),
  longActing: dosesOfDays,
  others: dosesOfDays,
  rates: z.boolean(),
  withoutAmount: z.number(),
});

const pregnancyWeek = z.strictObject({
  from: z.iso.date(),
  days: z.number(),
  share: z.number(),
  inRangeShare: z.number().nullable(),
  lowShare: z.number().nullable(),
  meanMgPerDl: z.number().nullable(),
  week: z.number().nullable(),
});

const besideGoal = z.strictObject({
  n: z.number(),
  medianMgPerDl: z.number().nullable(),
  below: z.number(),
  goalMgPerDl: z.number(),
  of: z.enum(['published', 'clinic']),
});

export const pregnancy = z.strictObject({
  weeks: z.array(pregnancyWeek),
  fasting: besideGoal,
  oneHour: besideGoal,
  twoHours: besideGoal,
});

const near = z.union([
  z.strictObject({ of: z.enum(['low', 'high']), index: z.number() }),
  z.strictObject({ of: z.literal('night'), date: z.iso.date() }),
]);

export const remark = z.strictObject({
  atEpochMs: z.number(),
  date: z.iso.date(),
  minute: z.number().nullable(),
  text: z.string(),
  felt: z.boolean(),
  near: z.array(near),
});

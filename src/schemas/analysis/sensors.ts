import * as z from 'zod';
import '../jitless.ts';

const sensorWorn = z.strictObject({
  fromEpochMs: z.number(),
  toEpochMs: z.number(),
  date: z.iso.date(),
  intervalMinutes: z.number(),
  readings: z.number(),
  begun: z.boolean(),
  pauseMinutes: z.number().nullable(),
});

const dayOfSensor = z.strictObject({
  day: z.number(),
  sensors: z.number(),
  share: z.number(),
  meanMgPerDl: z.number().nullable(),
  lowShare: z.number(),
  inRangeShare: z.number(),
});

export const sensors = z.strictObject({ worn: z.array(sensorWorn), byDay: z.array(dayOfSensor) });

export const oddStretches = z.strictObject({
  flat: z.array(
    z.strictObject({ date: z.iso.date(), minute: z.number(), minutes: z.number(), valueMgPerDl: z.number() }),
  ),
  jumps: z.array(
    z.strictObject({
      date: z.iso.date(),
      minute: z.number(),
      fromMgPerDl: z.number(),
      toMgPerDl: z.number(),
      minutes: z.number(),
    }),
  ),
  belowLimit: z.number(),
  aboveLimit: z.number(),
  still: z.array(
    z.strictObject({
      date: z.iso.date(),
      minute: z.number(),
      toDate: z.iso.date(),
      minutes: z.number(),
      side: z.enum(['below', 'above', 'value']),
      valueMgPerDl: z.number().nullable(),
    }),
  ),
  stillShare: z.number(),
});

const gridZone = z.enum(['A', 'B', 'C', 'D', 'E']);

const stickPair = z.strictObject({
  atEpochMs: z.number(),
  date: z.iso.date(),
  minute: z.number(),
  fingerMgPerDl: z.number(),
  sensorMgPerDl: z.number(),
  hoursWorn: z.number().nullable(),
  zone: gridZone,
});

export const fingersticks = z.strictObject({
  pairs: z.array(stickPair),
  noted: z.number(),
  alone: z.number(),
  mardShare: z.number(),
  medianArdShare: z.number(),
  biasMgPerDl: z.number(),
  relativeBiasShare: z.number(),
  madMgPerDl: z.number(),
  within15Share: z.number(),
  within20Share: z.number(),
  zones: z.record(gridZone, z.number()),
  afterFirstDay: z.strictObject({ pairs: z.number(), mardShare: z.number() }).nullable(),
});

export const medicinesNoted = z.strictObject({
  list: z.array(
    z.strictObject({ id: z.string(), noted: z.string(), date: z.iso.date(), minute: z.number().nullable() }),
  ),
});

export const alarms = z.strictObject({
  noted: z.number(),
  days: z.number(),
  nights: z.array(z.strictObject({ date: z.iso.date(), alarms: z.number() })),
  lowsWith: z.number(),
  lows: z.number(),
  withoutLow: z.number(),
});

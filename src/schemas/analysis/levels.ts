import * as z from 'zod';
import '../jitless.ts';
import { band, bandMinutes, bound, estimate, interval, sensorLimit } from '../parts.ts';

export const coverage = z.strictObject({
  share: z.number(),
  hours: z.number(),
  ofHours: z.number(),
  night: z.strictObject({ share: z.number(), hours: z.number(), ofHours: z.number() }),
  byDay: z.array(z.strictObject({ date: z.iso.date(), share: z.number(), hours: z.number() })),
  byHourShare: z.array(z.number()),
  daysWithReadings: z.number(),
  fullDays: z.number(),
  enough: z.boolean(),
  reached72h: z.boolean(),
  wholeDay: z.boolean(),
  missingMinutes: z.strictObject({ hole: z.number(), change: z.number(), edge: z.number() }),
});

export const meanGlucose = z.strictObject({
  meanMgPerDl: estimate,
  bounded: z.boolean(),
  bound: bound,
  censored: z.number(),
  below: z.number(),
  above: z.number(),
});

export const gmi = z.strictObject({ percent: z.number(), mmolPerMol: z.number() });

export const labA1c = z.strictObject({
  percent: z.number(),
  mmolPerMol: z.number(),
  eagMgPerDl: z.number(),
  meanMgPerDl: z.number().nullable(),
  gmiPercent: z.number().nullable(),
  differencePercent: z.number().nullable(),
});

export const timeInBands = z.strictObject({
  minutes: bandMinutes,
  exclusiveShare: z.record(band, estimate),
  cumulativeShare: z.strictObject({ low: estimate, high: estimate }),
  goals: z.array(
    z.strictObject({
      of: band,
      op: z.enum(['<', '>']),
      share: z.number(),
      met: z.boolean(),
    }),
  ),
  judged: z.boolean(),
});

const modalBin = z.strictObject({
  minute: z.number(),
  p5MgPerDl: z.number().nullable(),
  p25MgPerDl: z.number().nullable(),
  p50MgPerDl: z.number().nullable(),
  p75MgPerDl: z.number().nullable(),
  p95MgPerDl: z.number().nullable(),
  n: z.number(),
  days: z.number(),
});

export const modalDay = z.strictObject({ binMinutes: z.number(), bins: z.array(modalBin), raw: z.array(modalBin) });

export const curveRange = z.strictObject({
  minute: z.number(),
  p25MgPerDl: interval,
  p50MgPerDl: interval,
  p75MgPerDl: interval,
});

export const hourShares = z.strictObject({
  hour: z.number(),
  minutes: z.number(),
  days: z.number(),
  shares: z.record(band, z.number()).nullable(),
});

export const night = z.strictObject({
  date: z.iso.date(),
  share: z.number(),
  state: z.enum(['very-low', 'low', 'none-seen', 'unknown']),
  outside: z.boolean(),
  lowMinutes: z.number(),
  veryLowMinutes: z.number(),
  highMinutes: z.number(),
  lowestMgPerDl: z.number().nullable(),
  lowestLimit: sensorLimit,
  lowestMinute: z.number().nullable(),
  longestLowMinutes: z.number(),
});

export const dailySummary = z.strictObject({
  date: z.iso.date(),
  share: z.number(),
  meanMgPerDl: z.number().nullable(),
  lowestMgPerDl: z.number().nullable(),
  highestMgPerDl: z.number().nullable(),
  limits: z.strictObject({ lowest: sensorLimit, highest: sensorLimit }),
  bound: bound,
  minutes: bandMinutes,
  inRangeShare: z.number().nullable(),
  full: z.boolean(),
});

const dayWindow = z.strictObject({
  fromMinute: z.number(),
  toMinute: z.number(),
  inRangeShare: z.number(),
  lowShare: z.number(),
  highShare: z.number(),
  days: z.number(),
  goodDays: z.array(z.iso.date()),
});

export const dayWindows = z.strictObject({ best: dayWindow, hardest: dayWindow, all: z.array(dayWindow) });

export const dawnRise = z.strictObject({
  nights: z.array(
    z.strictObject({
      date: z.iso.date(),
      nadirMgPerDl: z.number(),
      nadirMinute: z.number(),
      beforeMgPerDl: z.number(),
      riseMgPerDl: z.number(),
    }),
  ),
  medianMgPerDl: z.number(),
  leftOut: z.number(),
});

export const overnight = z.strictObject({
  nights: z.array(
    z.strictObject({
      date: z.iso.date(),
      startMgPerDl: z.number(),
      endMgPerDl: z.number(),
      changeMgPerDl: z.number(),
      rangeMgPerDl: z.number(),
    }),
  ),
  medianMgPerDl: z.number(),
  steady: z.number(),
});

const slopes = z.strictObject({
  over1MgPerDlPerMinute: z.number(),
  over2MgPerDlPerMinute: z.number(),
  over3MgPerDlPerMinute: z.number(),
});

export const rates = z.strictObject({
  fallingShare: slopes,
  risingShare: slopes,
  steepest: z
    .strictObject({
      rateMgPerDlPerMinute: z.number(),
      date: z.iso.date(),
      minute: z.number(),
      fromMgPerDl: z.number(),
      toMgPerDl: z.number(),
    })
    .nullable(),
  largest: z
    .strictObject({
      date: z.iso.date(),
      minute: z.number(),
      minutes: z.number(),
      fromMgPerDl: z.number(),
      toMgPerDl: z.number(),
      limits: z.strictObject({ from: sensorLimit, to: sensorLimit }),
    })
    .nullable(),
});

export const weekParts = z.strictObject({
  weekdays: z.number(),
  weekends: z.number(),
  hours: z.array(
    z.strictObject({ hour: z.number(), weekdayMgPerDl: z.number().nullable(), weekendMgPerDl: z.number().nullable() }),
  ),
});

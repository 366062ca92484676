import * as z from 'zod';
import '../jitless.ts';
import { estimate, sensorLimit } from '../parts.ts';

const episodeDay = z.strictObject({
  date: z.iso.date(),
  fromMinute: z.number(),
  toMinute: z.number(),
  outerMinutes: z.number(),
});

const episode = z.strictObject({
  side: z.enum(['low', 'high']),
  startEpochMs: z.number(),
  endEpochMs: z.number(),
  date: z.iso.date(),
  startMinute: z.number(),
  endMinute: z.number(),
  minutes: z.number(),
  extremeMgPerDl: z.number(),
  extremeLimit: sensorLimit,
  extremeAtEpochMs: z.number(),
  level: z.literal([1, 2]),
  outerMinutes: z.number(),
  night: z.boolean(),
  days: z.array(episodeDay),
  cut: z.strictObject({ start: z.boolean(), end: z.boolean() }),
});

export const episodes = z.strictObject({
  list: z.array(episode),
  level2: z.number(),
  night: z.number(),
  perWeek: estimate,
  level2PerWeek: estimate,
});

const longHigh = z.strictObject({
  high: episode,
  minutes: z.number(),
  unbrokenMinutes: z.number(),
  insulinNotes: z.number(),
  basalNotes: z.number(),
  foodNotes: z.number(),
});

export const longHighs = z.strictObject({
  levelMgPerDl: z.number(),
  list: z.array(longHigh),
  share: z.number(),
  unbrokenMinutes: z.number(),
  mostInDayMinutes: z.number(),
  days: z.number(),
  insulinDays: z.number(),
  basalDays: z.number(),
  foodDays: z.number(),
  basal: z.enum(['none', 'long-acting', 'rates', 'both']),
  top: z.array(
    z.strictObject({
      date: z.iso.date(),
      minutes: z.number(),
      insulin: z.boolean(),
      basal: z.boolean(),
      food: z.boolean(),
    }),
  ),
});

const notedNear = z.strictObject({ date: z.iso.date(), minute: z.number(), name: z.string() });

const lowStory = z.strictObject({
  lows: z.array(z.number()),
  gravest: z.number(),
  exercise: notedNear.nullable(),
  food: notedNear.nullable(),
  insulinOnly: notedNear.nullable(),
  alarm: notedNear.nullable(),
  eaten: notedNear.nullable(),
  remark: notedNear.nullable(),
  pressed: z.boolean(),
});

export const lowStories = z.strictObject({ stories: z.array(lowStory), gravestFirst: z.array(z.number()) });

export const rebounds = z.strictObject({
  list: z.array(
    z.strictObject({
      low: episode,
      highStartEpochMs: z.number(),
      highDate: z.iso.date(),
      minutesAfter: z.number(),
      peakMgPerDl: z.number(),
      peakLimit: sensorLimit,
    }),
  ),
  ofLows: z.number(),
});

const pressedLow = z.strictObject({ low: episode, fallMgPerDl: z.number(), backMgPerDl: z.number() });

export const pressedLows = z.strictObject({
  list: z.array(pressedLow),
  lows: z.number(),
  nightLows: z.number(),
  veryLows: z.number(),
  pressedVeryLows: z.number(),
});

const lowsInHours = z.strictObject({ lows: z.number(), hours: z.number() });
const stretch = z.strictObject({ fromHours: z.number(), toHours: z.number() }).extend(lowsInHours.shape);

export const lowsLined = z.strictObject({
  during: lowsInHours,
  exercise: z.array(stretch),
  bedtime: z.array(stretch),
  without: lowsInHours,
});

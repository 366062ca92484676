import * as z from 'zod';
import './jitless.ts';

export const targetId = z.enum(['adult', 'older', 'pregnancy-type-1', 'pregnancy-other']);
export const band = z.enum(['very-low', 'low', 'in-range', 'high', 'very-high']);
/** What two periods are compared by. */
export const compared = z.enum([...band.options, 'mean', 'cv', 'lows', 'very-lows', 'highs']);
/** What came of a day, before which notes are counted. */
export const outcome = z.enum(['lows', 'very-lows', 'night-lows', 'very-highs', 'much-high', 'unsteady']);

/** Of a reading: 0, or beyond the sensor's lower (-1) or upper (1) limit. */
export const sensorLimit = z.literal([-1, 0, 1]);
/** How readings beyond those limits make a number a bound. */
export const bound = z.enum(['lower', 'upper', 'both']).nullable();

export const interval = z.strictObject({ value: z.number(), low: z.number(), high: z.number() });

export const estimate = z.strictObject({
  value: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  level: z.number(),
  method: z.string(),
  days: z.number(),
});

export const bandMinutes = z.record(band, z.number());

export const noteKind = z.enum([
  'meal',
  'insulin',
  'insulin-rate',
  'exercise',
  'medication',
  'fingerstick',
  'calibration',
  'alarm',
  'sensor',
  'text',
]);

export const slot = z.enum(['morning', 'midday', 'afternoon', 'evening', 'night', 'snack']);

export const noted = z.strictObject({
  id: z.enum([
    'exercise',
    'exercise-kind',
    'food',
    'bedtime-food',
    'insulin',
    'insulin-only',
    'insulin-after',
    'more-carbs',
    'alarm',
    'weekend',
    'first-sensor-day',
  ]),
  name: z.string(),
});

export const times = z.strictObject({ k: z.number(), n: z.number() });

export const glucoseUnit = z.enum(['mg/dL', 'mmol/L']);
export const dateOrder = z.enum(['day-first', 'month-first', 'year-first']);

export const goal = z.strictObject({
  of: band,
  op: z.enum(['<', '>']),
  share: z.number(),
});

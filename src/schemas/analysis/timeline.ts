import * as z from 'zod';
import '../jitless.ts';
import { glucoseUnit, noteKind } from '../parts.ts';
import { origin } from './files.ts';

const day = z.strictObject({
  date: z.iso.date(),
  weekday: z.number(),
  startEpochMs: z.number(),
  minutes: z.number(),
  fromReading: z.number(),
  toReading: z.number(),
});

const gap = z.strictObject({
  fromEpochMs: z.number(),
  toEpochMs: z.number(),
  minutes: z.number(),
  kind: z.enum(['hole', 'change', 'edge']),
});

const spell = z.strictObject({
  fromEpochMs: z.number(),
  toEpochMs: z.number(),
  intervalMinutes: z.number(),
  count: z.number(),
});

const column = z.array(z.number().nullable());

/** One column a list; only their number, where single readings were left out. */
const readings = z.union([
  z.strictObject({
    count: z.number(),
    atEpochMs: column,
    mgPerDl: column,
    native: column,
    unit: column,
    limit: column,
    day: column,
    minute: column,
    weightMinutes: column,
  }),
  z.strictObject({ count: z.number() }),
]);

const note = z.strictObject({
  wallEpochMs: z.number(),
  offsetMinutes: z.number().nullable(),
  timed: z.boolean(),
  origin,
  row: z.number(),
  kind: noteKind,
  amount: z.number().optional(),
  unit: z.string().optional(),
  label: z.string().optional(),
  minutes: z.number().optional(),
  text: z.string().optional(),
  atEpochMs: z.number(),
  day: z.number(),
  minute: z.number(),
});

export const timeline = z.strictObject({
  zone: z.string().nullable(),
  unit: glucoseUnit,
  from: z.iso.date(),
  to: z.iso.date(),
  chosenBy: z.enum(['user', 'default']),
  days: z.array(day),
  readings,
  notes: z.array(note),
  gaps: z.array(gap),
  spells: z.array(spell),
  intervalMinutes: z.number(),
  gapMinutes: z.number(),
  mixed: z.boolean(),
  allDays: z.array(z.iso.date()),
});

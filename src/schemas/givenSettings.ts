import * as z from 'zod';
import type { Issue } from '../model/issues.ts';
import type { Settings } from '../model/settings.ts';
import { dateOrder, glucoseUnit, targetId } from './parts.ts';
import './jitless.ts';
import { logWords } from './logWords.ts';
import { medicine } from './medicines.ts';
import { issuesOf } from './settings.ts';

const date = z.iso.date();
const line = z.string().min(1).max(80);
const goal = z.number().positive().nullable();
const marked = { date, text: z.string() };
const ways = {
  previous: z.strictObject({ with: z.literal('previous') }),
  dates: z.strictObject({ with: z.literal('dates'), from: date, to: date }),
  visits: z.strictObject({
    with: z.literal('visits'),
    visits: z.array(z.looseObject({ file: z.string(), sums: z.looseObject({ days: z.array(z.unknown()) }) })),
    changed: z.strictObject(marked).optional(),
  }),
  change: z.strictObject({ with: z.literal('change'), ...marked }),
};

/** What a program may hand to the library; a layout is looked at where files are read. */
const given = z.strictObject({
  targets: targetId,
  today: date,
  person: z.strictObject({
    name: line.optional(),
    code: line.optional(),
    clinic: line.optional(),
    phone: z.string().min(1).max(40).optional(),
  }),
  unit: glucoseUnit.optional(),
  zone: line.optional(),
  dateOrder: dateOrder.optional(),
  period: z
    .strictObject({ days: z.int().min(1).max(366).optional(), from: date.optional(), to: date.optional() })
    .optional(),
  layout: z.unknown().optional(),
  logWords: logWords.optional(),
  medicines: z.array(medicine).optional(),
  topicOrder: z.array(z.looseObject({ topic: z.string(), rule: z.string() })).optional(),
  topic: line.optional(),
  inferMeals: z.boolean().optional(),
  compare: z
    .looseObject({ with: z.enum(['previous', 'dates', 'visits', 'change']) })
    .pipe(z.discriminatedUnion('with', [ways.previous, ways.dates, ways.visits, ways.change]))
    .optional(),
  a1c: z.strictObject({ value: z.number().positive(), unit: z.enum(['%', 'mmol/mol']) }).optional(),
  dueDate: date.optional(),
  pregnancyGoals: z.strictObject({ fasting: goal, oneHour: goal, twoHours: goal }).optional(),
  moreIndices: z.boolean().optional(),
  acceptLosses: z.array(z.string()).optional(),
} satisfies Record<keyof Settings, z.ZodType>);

/** What does not fit in the settings that a program gave, each a refusal; none: they can be used. */
export function wrongSettings(settings: unknown): Issue[] {
  const checked = given.safeParse(settings);
  return checked.success ? [] : issuesOf(checked.error, { names: Object.keys(given.shape) });
}

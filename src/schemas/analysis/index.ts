import * as z from 'zod';
import '../jitless.ts';
import { dateOrder, glucoseUnit, targetId } from '../parts.ts';
import { fileAccount, issue, ledger, loss } from './files.ts';
import { why } from './measured.ts';
import { measures } from './measures.ts';
import { targetSet } from './targets.ts';
import { compareChoice, periodChoice } from './thenAndNow.ts';
import { timeline } from './timeline.ts';

const settings = z.strictObject({
  targets: targetId,
  today: z.string(),
  person: z.strictObject({
    name: z.string().optional(),
    code: z.string().optional(),
    clinic: z.string().optional(),
    phone: z.string().optional(),
  }),
  logWords: z.unknown().optional(),
  medicines: z.unknown().optional(),
  topicOrder: z.unknown().optional(),
  topic: z.string().optional(),
  period: periodChoice.optional(),
  unit: glucoseUnit.optional(),
  zone: z.string().optional(),
  dateOrder: dateOrder.optional(),
  inferMeals: z.boolean().optional(),
  compare: compareChoice.optional(),
  a1c: z.strictObject({ value: z.number(), unit: z.enum(['%', 'mmol/mol']) }).optional(),
  dueDate: z.iso.date().optional(),
  pregnancyGoals: z
    .strictObject({
      fastingMgPerDl: z.number().nullable(),
      oneHourMgPerDl: z.number().nullable(),
      twoHoursMgPerDl: z.number().nullable(),
    })
    .optional(),
  moreIndices: z.boolean().optional(),
  acceptLosses: z.array(z.string()).optional(),
  layout: z.unknown().optional(),
});

/** Each parameter of a sentence is a quantity named by `q`: glucose in mg/dL, shares 0 to 1. */
const quantity: z.ZodType<{ q: string }> = z.looseObject({ q: z.string() });
const params = z.record(z.string(), quantity);
const place = z.strictObject({
  date: z.iso.date(),
  fromMinute: z.number().optional(),
  toMinute: z.number().optional(),
});
const look = z.discriminatedUnion('case', [
  z.strictObject({
    case: z.literal('holds'),
    params,
    where: z.array(place),
    variant: z.string().optional(),
    also: params.optional(),
  }),
  z.strictObject({ case: z.literal('absent') }),
  z.strictObject({ case: z.literal('untold'), why }),
]);

const topic = z.strictObject({ id: z.string(), rule: z.string() });

/** The file `analysis.json`. */
export const analysis = z.strictObject({
  files: z.array(fileAccount),
  ledger,
  outside: z.strictObject({ readings: z.number(), notes: z.number() }),
  issues: z.array(issue),
  losses: z.array(loss),
  missing: z.array(z.string()),
  schema: z.literal(3),
  version: z.string(),
  hash: z.string(),
  settings,
  targets: targetSet,
  measures,
  indices: z.record(z.string(), z.unknown()).optional(),
  found: z.array(z.strictObject({ id: z.string(), look })),
  topics: z.array(topic),
  /** What the rules gave where somebody chose another topic; null: none. */
  topicByRule: topic.nullable().optional(),
  timeline,
});

export type AnalysisJson = z.infer<typeof analysis>;

import * as z from 'zod';
import '../jitless.ts';

/** Lines and columns from 1; line 0 is the file as a whole. */
export const origin = z.strictObject({ file: z.string(), line: z.number(), column: z.number().optional() });

export const ledger = z.strictObject({
  rows: z.number(),
  used: z.number(),
  duplicate: z.number(),
  setAside: z.number(),
  notes: z.number(),
  ignored: z.number(),
});

export const loss = z.strictObject({ file: z.string(), lost: z.number(), of: z.number(), accepted: z.boolean() });

/** What was found or expected: a text of the file, or data named by `is`. */
const detail: z.ZodType<{ is: string }> = z.looseObject({ is: z.string() });
const question: z.ZodType<{ of: string }> = z.looseObject({ of: z.string() });
type Shown = string | number | { is: string } | readonly string[] | readonly { is: string }[];
const shown: z.ZodType<Shown> = z.union([z.string(), z.number(), detail, z.array(z.string()), z.array(detail)]);

export const issue = z.strictObject({
  code: z.string(),
  level: z.enum(['note', 'warning', 'refusal']),
  origin: origin.optional(),
  actual: shown.optional(),
  expected: shown.optional(),
  question: question.optional(),
  count: z.number().optional(),
});

const choice = z.strictObject({
  id: z.string(),
  value: z.union([z.string(), z.number(), z.array(z.strictObject({ name: z.string(), role: z.string() }))]),
  by: z.enum(['user', 'file', 'default']),
  evidence: detail.optional(),
});

export const fileAccount = z.strictObject({
  name: z.string(),
  kind: z.string(),
  hash: z.string(),
  choices: z.array(choice),
  ledger,
  persons: z.array(z.string()),
  columns: z.array(z.unknown()).optional(),
  layout: z.unknown().optional(),
});

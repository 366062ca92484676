import * as z from 'zod';
import { glucoseUnit, targetId } from './parts.ts';
import './jitless.ts';

const text = z.string().min(1).max(80);

/** A row of a clinic's manifest, column by column, as text. Only `person`, the folder or file, has to be there. */
export const manifestRow = z.strictObject({
  person: z.string().min(1),
  code: text.optional(),
  name: text.optional(),
  targets: targetId.optional(),
  unit: glucoseUnit.optional(),
  zone: text.optional(),
  language: z.enum(['en', 'es']).optional(),
  visit: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}(?:[ T]+(?:[01]\d|2[0-3]):[0-5]\d)?$/)
    .optional(),
  a1c: z
    .string()
    .regex(/^\d{1,2}(?:[.,]\d{1,2})?$/)
    .optional(),
});

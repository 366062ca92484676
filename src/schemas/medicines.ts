import * as z from 'zod';
import type { Medicine } from '../model/trust.ts';
import './jitless.ts';

const text = z.string().regex(/\S/);
export const medicine = z.object({ id: text, words: z.array(text).min(1), source: text });
const file = z.object({ medicines: z.array(medicine) });

/** The list in a file of medicines, as a clinic may have edited it; undefined where it is none. */
export function checkMedicines(content: unknown): Medicine[] | undefined {
  return file.safeParse(content).data?.medicines;
}

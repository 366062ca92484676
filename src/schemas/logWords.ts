import * as z from 'zod';
import type { LogWords } from '../model/logbook.ts';
import './jitless.ts';
import { slot } from './parts.ts';
import { check } from './problems.ts';

const words = z.array(z.string());

export const logWords = z.strictObject({
  about: z.unknown().optional(),
  amounts: words,
  joins: words,
  plurals: z.array(z.tuple([z.string(), z.string()])),
  foods: z.record(z.string(), words),
  meals: z.partialRecord(slot, words),
  treatsLow: words,
  effort: z.looseObject({ light: words, hard: words }),
  longActing: words,
  felt: words.optional(),
}) satisfies z.ZodType<LogWords>;

/** Checks the content of a file of logbook words, as a clinic may have edited it. Tells each place that does not fit. */
export function checkLogWords(content: unknown): { words: LogWords } | { problems: string[] } {
  const checked = check(logWords, content, '{ }');
  if (!checked.ok) return { problems: checked.problems };
  const { about: _, ...given } = checked.value;
  return { words: given };
}

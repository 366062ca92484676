import { fingerprint } from '../bytes/hash.ts';
import { layered, type Words } from './layers.ts';
import type { Place } from './place.ts';

/** What a clinician has read and approved, text by text: see templates/words/locked.json. */
interface Lock {
  review: string;
  texts: Record<string, string>;
}

/** The first 16 hexadecimal digits of the SHA-256 of a text. */
export const seal = (text: string): string => fingerprint(text).slice(0, 16);

/** What stands at a key of a words file, be it a text or none. */
export const textAt = (all: unknown, key: string): unknown =>
  key.split('.').reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], all);

/** A review holds for the very texts that were reviewed: one that was changed since, here or by a clinic, undoes it. */
function stillReviewed(all: Words, lock: Lock | undefined): boolean {
  if (lock?.review !== 'reviewed by a clinician') return false;
  return Object.entries(lock.texts).every(([key, sealed]) => seal(String(textAt(all, key))) === sealed);
}

/** Words files as parsed JSON: those of a language, what is laid over them for a region, and the seals. */
export interface WordsFiles {
  base: unknown;
  over?: unknown;
  locked: unknown;
}

/** The words of the papers for a place. */
export function wordsFor({ language, over, locale }: Place, files: WordsFiles): Words {
  const locks = files.locked as Record<string, Lock>;
  const base = files.base as Words;
  const above = (files.over ?? {}) as Words;
  const reviewed = stillReviewed(base, locks[language]) && (over === undefined || stillReviewed(above, locks[over]));
  return {
    ...layered(base, above),
    ...(locale === undefined ? {} : { locale }),
    review: reviewed ? 'reviewed' : 'not reviewed',
  };
}

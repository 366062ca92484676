import { fingerprint } from '../bytes/hash.ts';
import { layered, type Place, type Words } from '../language/index.ts';
import { words } from './home.ts';

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

const assembled = new Map<string, Words>();

function assemble({ language, over, locale }: Place): Words {
  const locks = words('locked') as unknown as Record<string, Lock>;
  const base = words(language) as Words;
  const above = over === undefined ? {} : (words(over) as Words);
  const reviewed = stillReviewed(base, locks[language]) && (over === undefined || stillReviewed(above, locks[over]));
  return {
    ...layered(base, above),
    ...(locale === undefined ? {} : { locale }),
    review: reviewed ? 'reviewed' : 'not reviewed',
  };
}

/** The words of the papers for a place; the same object each time, which saves a batch from reading them again. */
export function paperWords(place: Place): Words {
  const key = [place.language, place.over, place.locale].join();
  let all = assembled.get(key);
  if (!all) {
    all = assemble(place);
    assembled.set(key, all);
  }
  return all;
}

import { type Place, type Words, wordsFor } from '../language/index.ts';
import { words } from './home.ts';

const assembled = new Map<string, Words>();

/** The words of the papers for a place; the same object each time, which saves a batch from reading them again. */
export function paperWords(place: Place): Words {
  const { language, over, locale } = place;
  const key = [language, over, locale].join();
  let all = assembled.get(key);
  if (!all) {
    const files = { base: words(language), locked: words('locked') };
    all = wordsFor(place, over === undefined ? files : { ...files, over: words(over) });
    assembled.set(key, all);
  }
  return all;
}

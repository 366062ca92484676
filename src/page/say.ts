import type { Below } from '../model/words.ts';
import { baked } from './baked.ts';
import { kept } from './kept.ts';

/** The page's own words: what it says itself, in one language, as the build put them into the file. */
export interface ScreenWords {
  language: 'en' | 'es';
  screen: Record<string, unknown>;
  /** Names of target sets, of roles of columns, and the cautions, by id. */
  targets: Record<string, string>;
  roles: Record<string, string>;
  /** What a word in a column of kinds can say about its rows, by its name in `roles`, and `ignore`. */
  kinds: readonly string[];
  cautions: Record<string, string>;
}

export type ScreenKey = Below<'screen'>;

const books = new Map<string, ScreenWords>();
let current: ScreenWords | undefined;

/** Changes the language of all that is said from now on. */
export function speak(language: 'en' | 'es'): ScreenWords {
  let words = books.get(language);
  if (!words) {
    words = changedBy(JSON.parse(kept(`words-${language}`)) as ScreenWords, baked?.words?.[language]);
    books.set(language, words);
  }
  current = words;
  document.documentElement.lang = language;
  return words;
}

/** The same of a clinic's own words file. */
function changedBy(words: ScreenWords, own: unknown): ScreenWords {
  if (own === undefined) return words;
  const { screen, targets, understood, cautions } = own as Pick<ScreenWords, 'screen' | 'cautions'> & {
    targets: Record<string, { name: string }>;
    understood: Pick<ScreenWords, 'roles'>;
  };
  const names = Object.fromEntries(Object.keys(words.targets).map((id) => [id, targets[id]!.name]));
  return { ...words, screen, cautions, targets: names, roles: understood.roles };
}

export const spoken = (): ScreenWords => current ?? speak('en');

/** A sentence of the page. Its words hold no plural and no number of ours: those come said from the worker. */
export function say(key: ScreenKey, texts: Readonly<Record<string, string>> = {}): string {
  const text = key
    .split('.')
    .reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], spoken().screen);
  return String(text ?? key).replace(/\{(\w+)\}/g, (whole, name: string) => texts[name] ?? whole);
}

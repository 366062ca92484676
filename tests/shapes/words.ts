import { readdirSync, readFileSync } from 'node:fs';

/** What a language calls things in logs, written for this generator; no list of the program or its templates was used. */
export interface Words {
  language: string;
  names: Record<string, string>;
  decoys: Record<string, string>;
  kinds: Record<string, string>;
  months: string[];
  foods: string[];
  remarks: string[];
  moves: string[];
  pills: string[];
}

const folder = new URL('words/', import.meta.url);
const read = (name: string) => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));

export const words = new Map<string, Words>(
  readdirSync(folder)
    .filter((name) => /^[a-z]{2}\.json$/.test(name))
    .sort((a, b) => Number(b === 'en.json') - Number(a === 'en.json') || (a < b ? -1 : 1))
    .map((name) => [name.slice(0, 2), read(name)]),
);
export const LANGUAGES = [...words.keys()];

/** Kinds of record, in the order of the vocabularies below. */
export const KINDS = ['sensor', 'fingerstick', 'rapid', 'long', 'meal', 'exercise', 'note', 'medicine'] as const;

const unknown: Record<string, string[]> = read('unknownKinds.json').vocabularies;
/** Vocabularies that stand nowhere in the program: see words.test.ts. */
export const UNKNOWN_KINDS = Object.keys(unknown);
/** `own`: of the language of the headers. */
export const KNOWN_KINDS = ['own', 'in-en', 'in-de', 'in-fr', 'in-es', 'in-it', 'in-sv', 'in-fi'];

export function kindWord(vocabulary: string, language: string, kind: string): string {
  const list = unknown[vocabulary];
  if (list) return list[KINDS.indexOf(kind as (typeof KINDS)[number])]!;
  return words.get(vocabulary === 'own' ? language : vocabulary.slice(3))!.kinds[kind]!;
}

export const unknownKindWords = (): string[] => Object.values(unknown).flat();

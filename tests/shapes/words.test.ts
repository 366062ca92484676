import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { rowKind } from '../../src/readers/notes/kinds.ts';
import { pairs } from './cover.ts';
import { PROPERTIES } from './shape.ts';
import { KNOWN_KINDS, LANGUAGES, UNKNOWN_KINDS, unknownKindWords } from './words.ts';

const home = fileURLToPath(new URL('../..', import.meta.url));
const textOf = (folder: string): string =>
  readdirSync(join(home, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(ts|json|html|css)$/.test(path))
    .map((path) => readFileSync(join(home, folder, path), 'utf8'))
    .join('\n')
    .toLowerCase();

test('kinds called unknown stand neither in the program nor in its templates', () => {
  const everything = textOf('src') + textOf('templates');
  // Single letters and bare numbers stand everywhere and mean nothing.
  const wordlike = unknownKindWords().filter((word) => /\p{L}{3}/u.test(word));
  expect(
    wordlike.filter((word) => new RegExp(`(?<!\\p{L})${word.toLowerCase()}(?!\\p{L})`, 'u').test(everything)),
  ).toEqual([]);
  expect(unknownKindWords().filter((word) => rowKind(word) !== undefined)).toEqual([]);
});

test('there is enough of everything', () => {
  expect(LANGUAGES.length).toBeGreaterThanOrEqual(14);
  expect(KNOWN_KINDS.length + UNKNOWN_KINDS.length).toBeGreaterThanOrEqual(12);
  expect(UNKNOWN_KINDS.length * 2).toBeGreaterThanOrEqual(KNOWN_KINDS.length + UNKNOWN_KINDS.length);
  const atLeast = { unitAt: 6, time: 30, decoy: 11, person: 9, notes: 6, defect: 21 };
  for (const [property, count] of Object.entries(atLeast))
    expect(PROPERTIES[property as keyof typeof PROPERTIES].length, property).toBeGreaterThanOrEqual(count);
  expect(pairs().length).toBeGreaterThan(20_000);
});

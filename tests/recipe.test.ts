import { expect, test } from 'vitest';
import { missing, type Tree } from '../src/build/recipes.ts';
import { tree } from '../src/build/tree.ts';

test('every unit has all that its recipe in DEVELOPERS.md asks for', () => {
  expect(missing(tree)).toEqual([]);
});

/** The tree with a file more, or with other text in one. */
const changed = (path: string, text: (before: string) => string): Tree => ({
  paths: [...new Set([...tree.paths, path])],
  text: (one) => (one === path ? text(tree.paths.includes(path) ? tree.text(path) : '') : tree.text(one)),
});
type Nested = { [name: string]: string | Nested };
const without = (language: string, drop: (words: Record<string, Nested>) => void): Tree =>
  changed(`templates/words/${language}.json`, (before) => {
    const words = JSON.parse(before) as Record<string, Nested>;
    drop(words);
    return JSON.stringify(words);
  });

test.each<[string, Tree, string[]]>([
  [
    'a finding nobody registered',
    changed('src/findings/toy.ts', () => 'export const toy = 1;'),
    ['src/findings/toy.ts: not in the list of src/findings/index.ts'],
  ],
  [
    'a finding whose file has another name',
    { ...tree, paths: tree.paths.filter((path) => path !== 'src/findings/dawnRise.ts') },
    ['finding dawn-rise: no file src/findings/dawnRise.ts'],
  ],
  [
    'a finding without words in one language',
    without('es', ({ findings }) => delete findings!['dawn-rise']),
    [
      'templates/words/es.json: findings.dawn-rise lacks name, topic, untold, clinic.what, clinic.why, clinic.ask, patient.what, patient.ask',
    ],
  ],
  [
    'words for no finding',
    without('en', ({ findings }) => Object.assign(findings!, { toy: {} })),
    ['templates/words/en.json: words for a finding toy that there is not'],
  ],
  [
    'a topic that is misspelt, and a rule',
    changed('templates/topics.json', (before) =>
      before.replace('"long-lows"', '"long-low"').replace('"wide-spread"', '"wide-spread", "rule": "spread"'),
    ),
    ['templates/topics.json: long-low is no finding'],
  ],
  [
    'a measure without its name',
    without('en', ({ measures }) => delete (measures!.gmi as Nested).name),
    ['templates/words/en.json: measures.gmi lacks name'],
  ],
  [
    'a chart on no page',
    changed('src/charts/toy.ts', () => 'export function toyChart() {}'),
    ['src/charts/toy.ts: no page calls toyChart'],
  ],
  [
    'a page in no paper',
    changed('src/pages/toy.ts', () => 'export const toy: PageMaker = () => null;'),
    ['src/pages/toy.ts: toy has no place in src/pages/index.ts'],
  ],
  [
    'a sentence without words',
    changed('src/pages/visit/agreeing.ts', (before) => `${before}speaker.say('pages.agreed.toy');`),
    ['templates/words/en.json: no pages.agreed.toy, which src/pages/visit/agreeing.ts says'],
  ],
  [
    'an input kind that is not documented',
    changed('docs/formats.md', (before) => before.replace('| `fhir` |', '')),
    ['input kind fhir: no row in docs/formats.md'],
  ],
  [
    'a language nobody offers',
    changed('templates/words/fi.json', () => tree.text('templates/words/es.json')),
    [
      'language fi: not in src/language/place.ts',
      'language fi: its safety texts have no seals in templates/words/locked.json',
    ],
  ],
])('%s is told once, by name', (_, without, expected) => {
  expect(missing(without)).toEqual(expected);
});

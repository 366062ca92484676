import { examples } from '../../tests/findings/examples/index.ts';
import { findings } from '../findings/index.ts';
import { indices } from '../indices/index.ts';
import { LANGUAGES, lacking, type Words } from '../language/index.ts';
import { measures } from '../measures/index.ts';
import { readers } from '../readers/index.ts';
import { targetSets } from '../targets/index.ts';

/** The tree: paths from its top, and what is in them. */
export interface Tree {
  paths: readonly string[];
  text(path: string): string;
}

/**
 * What the recipes of DEVELOPERS.md ask for and is not there, each thing once and by name: a unit half added is told in a line,
 * not in the tests that its missing words make red. What types can ask for, they ask for.
 */
export function missing(tree: Tree): string[] {
  return [findingsOf, topicsOf, measuresOf, targetsOf, chartsOf, pagesOf, kindsOf, wordsOf, saidOf].flatMap((look) =>
    look(tree),
  );
}

const camel = (id: string): string => id.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
const within = ({ paths }: Tree, room: string): string[] =>
  paths.filter((path) => path.startsWith(room) && /^\w+\.ts$/.test(path.slice(room.length)));

function findingsOf(tree: Tree): string[] {
  const files = findings.map(({ id }) => `src/findings/${camel(id)}.ts`);
  return [
    ...within(tree, 'src/findings/')
      .filter((path) => ![...files, 'src/findings/index.ts', 'src/findings/finding.ts'].includes(path))
      .map((path) => `${path}: not in the list of src/findings/index.ts`),
    ...findings.flatMap(({ id, source }, i) => {
      const shown = examples[id]?.map(([, , expected]) => expected) ?? [];
      return [
        ...(tree.paths.includes(files[i]!) ? [] : [`finding ${id}: no file ${files[i]}`]),
        ...(source === '' ? [`finding ${id}: no source`] : []),
        ...(shown.includes('holds') && shown.some((one) => one !== 'holds')
          ? []
          : [`finding ${id}: one example that holds and one that does not, in tests/findings/examples/`]),
      ];
    }),
  ];
}

/** The usual order is JSON, which a clinic may change, and so is not met by types. */
function topicsOf(tree: Tree): string[] {
  const path = 'templates/topics.json';
  const { rows } = JSON.parse(tree.text(path)) as { rows: { topic: string; rule: string }[] };
  const rules = (JSON.parse(tree.text('templates/words/en.json')) as Words).findings as Words;
  return rows.flatMap(({ topic, rule }) => [
    ...(findings.some(({ id }) => id === topic.split('/')[0]) ? [] : [`${path}: ${topic} is no finding`]),
    ...(wordAt(rules, `rules.${rule}`) === undefined ? [`${path}: the rule ${rule} has no words`] : []),
  ]);
}

const measuresOf = (): string[] =>
  Object.entries(measures).flatMap(([name, { id, source }]) => [
    ...(id === name ? [] : [`measure ${id}: registered as ${name}`]),
    ...(source === '' ? [`measure ${id}: no source`] : []),
  ]);

const targetsOf = (tree: Tree): string[] =>
  Object.values(targetSets).flatMap(({ id, source }) => [
    ...(tree.paths.includes(`src/targets/${camel(id)}.ts`) ? [] : [`target set ${id}: no file of its name`]),
    ...(source === '' ? [`target set ${id}: no source`] : []),
  ]);

function chartsOf(tree: Tree): string[] {
  const drawn = tree.paths.filter((path) => /^src\/pages\/[\w/]+\.ts$/.test(path)).map(tree.text);
  return within(tree, 'src/charts/').flatMap((path) =>
    [...tree.text(path).matchAll(/^export (?:function|const) (\w+Chart)\b/gm)]
      .filter(([, name]) => !drawn.some((text) => text.includes(`${name}(`)))
      .map(([, name]) => `${path}: no page calls ${name}`),
  );
}

function pagesOf(tree: Tree): string[] {
  const order = tree.text('src/pages/index.ts');
  return within(tree, 'src/pages/').flatMap((path) =>
    [...tree.text(path).matchAll(/^export const (\w+): PageMaker\b/gm)]
      .filter(([, name]) => !new RegExp(`\\b${name},|\\[.*\\b${name}\\b.*\\]`).test(order.replace(/^import.*$/gm, '')))
      .map(([, name]) => `${path}: ${name} has no place in src/pages/index.ts`),
  );
}

function kindsOf(tree: Tree): string[] {
  const [formats, ledgers] = ['docs/formats.md', 'tests/samples/ledgerKinds.test.ts'].map(tree.text);
  return readers.flatMap(({ id }) => [
    ...(formats!.includes(`| \`${id}\` |`) ? [] : [`input kind ${id}: no row in docs/formats.md`]),
    ...(new RegExp(`\\b${id.replace('-', '[- ]')}\\b`).test(ledgers!)
      ? []
      : [`input kind ${id}: rows in and out are not counted in tests/samples/ledgerKinds.test.ts`]),
  ]);
}

/** The words every language needs, by what asks for them. */
const NEEDED: readonly [section: string, ids: readonly string[], parts: readonly string[]][] = [
  [
    'findings',
    findings.map(({ id }) => id),
    ['name', 'topic', 'untold', 'clinic.what', 'clinic.why', 'clinic.ask', 'patient.what', 'patient.ask'],
  ],
  ['measures', Object.keys(measures), ['name', 'definition']],
  ['indices', Object.keys(indices), ['name', 'definition']],
  ['targets', Object.keys(targetSets), ['name', 'note']],
];

function wordsOf(tree: Tree): string[] {
  const path = (language: string) => `templates/words/${language}.json`;
  const read = (language: string) => JSON.parse(tree.text(path(language))) as Words;
  const written = tree.paths.flatMap((one) => /^templates\/words\/([a-z]{2,3})\.json$/.exec(one)?.[1] ?? []);
  const locked = JSON.parse(tree.text('templates/words/locked.json')) as Words;
  const english = read('en');
  return [
    ...LANGUAGES.filter((one) => !written.includes(one)).map((one) => `language ${one}: no file ${path(one)}`),
    ...written.flatMap((language) => [
      ...((LANGUAGES as readonly string[]).includes(language)
        ? []
        : [`language ${language}: not in src/language/place.ts`]),
      ...(language in locked
        ? []
        : [`language ${language}: its safety texts have no seals in templates/words/locked.json`]),
      ...listed(path(language), wanting(read(language), english)),
    ]),
    ...Object.keys(english.findings ?? {})
      .filter((id) => id !== 'rules' && !findings.some((one) => one.id === id))
      .map((id) => `${path('en')}: words for a finding ${id} that there is not`),
  ];
}

/** What code says by a whole key. Types find it as well, in four times the time and without naming the file of words. */
function saidOf(tree: Tree): string[] {
  const words = JSON.parse(tree.text('templates/words/en.json')) as Words;
  return (
    tree.paths
      // The page has words of its own, which types ask for.
      .filter((path) => /^src\/(?!page\/).*\.ts$/.test(path))
      .flatMap((path) => {
        const keys = [...tree.text(path).matchAll(/\b(?:say|plain)\(\s*'([a-zA-Z][\w-]*\.[\w.-]+)'/g)].map(
          ([, key]) => key!,
        );
        const unknown = [...new Set(keys)].filter((key) => typeof wordAt(words, key) !== 'string');
        return unknown.map((key) => `templates/words/en.json: no ${key}, which ${path} says`);
      })
  );
}

const wordAt = (words: Words, key: string): string | Words | undefined =>
  key.split('.').reduce<string | Words | undefined>((at, step) => (typeof at === 'object' ? at[step] : at), words);

/** Keys that the registries need, and those that English has. */
function wanting(words: Words, english: Words): string[] {
  const needed = NEEDED.flatMap(([section, ids, parts]) =>
    ids.flatMap((id) => parts.map((part) => `${section}.${id}.${part}`)),
  );
  return [...new Set([...needed.filter((key) => typeof wordAt(words, key) !== 'string'), ...lacking(words, english)])];
}

/** One line a unit, however many of its texts are missing. */
function listed(path: string, keys: string[]): string[] {
  const unitOf = (key: string) => key.split('.').slice(0, 2).join('.');
  return [...new Set(keys.map(unitOf))].map((unit) => {
    const parts = keys.filter((key) => unitOf(key) === unit).map((key) => key.slice(unit.length + 1));
    return `${path}: ${unit} lacks ${parts.join(', ')}`;
  });
}

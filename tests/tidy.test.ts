import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { catalogues } from '../src/build/catalogues.ts';

const home = fileURLToPath(new URL('..', import.meta.url));
const read = (path: string): string => readFileSync(join(home, path), 'utf8');
const words: unknown = JSON.parse(read('templates/words/en.json'));

/** Text files of the tree, from its top, without what is built or fetched. */
function filesUnder(folder: string): string[] {
  return readdirSync(join(home, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isDirectory()) {
      return ['node_modules', 'dist', 'dist.next', 'out', 'coverage', '.git'].includes(entry.name)
        ? []
        : filesUnder(path);
    }
    return [path];
  });
}
const files = filesUnder('');
const sources = files.filter((path) => path.startsWith('src/') && path.endsWith('.ts'));

function wordsAt(key: string): unknown {
  let at: unknown = words;
  for (const step of key.split('.'))
    at = typeof at === 'object' && at ? (at as Record<string, unknown>)[step] : undefined;
  return at;
}
const found = (pattern: RegExp, paths = sources): { path: string; text: string }[] =>
  paths.flatMap((path) => [...read(path).matchAll(pattern)].map((match) => ({ path, text: match[1]! })));

const namesIn = (text: string): Set<string> => new Set(text.match(/\w+/g));

test('nothing stands at the top but what the house is made of', () => {
  const allowed = [
    ...['README.md', 'DEVELOPERS.md', 'LICENSE', 'package.json', 'package-lock.json', 'tsconfig.json'],
    ...['src', 'templates', 'tests', 'sample-data', 'docs'],
    ...['node_modules', 'dist', 'dist.next', 'out', 'coverage'],
  ];
  expect(readdirSync(home).filter((name) => !name.startsWith('.') && !allowed.includes(name))).toEqual([]);
});

test('every issue that can be told has words', () => {
  const emitted = [
    ...found(/\bcode:\s*'([a-z][a-z0-9-]+)',\s*level:/g),
    ...found(/\badd\(\s*'([a-z][a-z0-9-]+)',\s*'(?:note|warning|refusal)'/g),
  ];
  expect(emitted.length).toBeGreaterThan(0);
  expect(emitted.filter(({ text }) => typeof wordsAt(`issues.${text}`) !== 'string')).toEqual([]);
});

test('what a file exports, another file imports', () => {
  const readers = files.filter((path) => path.endsWith('.ts')).map((path) => ({ path, names: namesIn(read(path)) }));
  const unused = found(/^export (?:async )?(?:const|function|class) (\w+)/gm).filter(
    ({ path, text }) => path !== 'src/index.ts' && !readers.some((one) => one.path !== path && one.names.has(text)),
  );
  expect(unused).toEqual([]);
});

test('what a file exports, the program uses, not the tests alone', () => {
  const uses = new Map<string, number>();
  for (const path of sources)
    for (const word of read(path).match(/\w+/g) ?? []) uses.set(word, (uses.get(word) ?? 0) + 1);
  const idle = found(/^export (?:async )?(?:const|function|class) (\w+)/gm).filter(
    ({ path, text }) => path !== 'src/index.ts' && (uses.get(text) ?? 0) < 2,
  );
  expect(idle).toEqual([]);
});

/** Words that fit anything say nothing of what they name. */
test('nothing is called told, made, beside or apart', () => {
  const code = files.filter((path) => /^(src|tests|sample-data)\/.*\.ts$/.test(path));
  const hiding = /(?:^|\/)(?:told|made|beside|apart)(?:\.\w+)+$/i;
  const declared = /\b(?:const|let|function|interface|type|class) \[?(told|made|beside|apart)\b/gi;
  const parameter =
    /\((?:[\w\s:,[\]]*, )?(told|made|beside|apart)(?:: [\w<>[\], ]+)?(?:, [^()]*)?\)(?:: [\w<>[\], ]+)? =>/gi;
  const field = /^\s+(?:\| \{ )?(told|made|beside|apart)\??:/gm;
  // Files that were written before keep their names: an outcome's change (`told`), a snapshot's origin (`made`).
  const kept = ['clinic/facts', 'model/clinic', 'schemas/outcome', 'schemas/snapshot'].map((path) => `src/${path}.ts`);
  const fields = found(field).filter(({ path }) => !kept.includes(path));
  expect([
    ...files.filter((path) => hiding.test(path)),
    ...found(declared, code),
    ...found(parameter, code),
    ...fields,
  ]).toEqual([]);
});

/**
 * A sentence whose key ends in a word that stands nowhere in the code is said by nobody, but for keys put together of two
 * words there. Cautions are kept whole, whether one is printed or not: they were reviewed together.
 */
test('no function is written right of an assignment to a property, where it would outlive what it holds', () => {
  // The engine (V8 11.3, from its parser) puts such a function among old objects: made for each document, it kept a person's papers in
  // memory until all of it was looked through. These two are made once.
  const once = ['src/writers/pdf/patches.ts font.layout', 'src/language/messages.ts IntlMessageFormat.resolveLocale'];
  const written =
    /(?<![\w.])([A-Za-z_$][\w$]*(?:\.[\w$]+)+) (?:\?\?|\|\|)?= (?:async )?(?:function\b|\([^()]*\)(?:: \S+)? =>|\w+ =>)/g;
  const rooms = sources.filter((path) => !/^src\/(page|build)\//.test(path));
  const places = found(written, rooms).map(({ path, text }) => `${path} ${text}`);
  expect(places.sort()).toEqual(once.sort());
});

test('every sentence is asked for by name', () => {
  const names = namesIn(sources.map(read).join('\n'));
  const kept =
    /^cautions\.|^units\.(below|above)Sensor$|^indices\.\w+\.(parts|units)\.(sleep|wake|week(days|end))[A-Z]\w+$/;
  const leaves = (at: unknown, key: string): string[] =>
    typeof at === 'object' && at !== null
      ? Object.entries(at).flatMap(([name, inner]) => leaves(inner, key === '' ? name : `${key}.${name}`))
      : [key];
  const silent = leaves(words, '').filter(
    (key) =>
      !key
        .split('.')
        .at(-1)!
        .split('-')
        .every((one) => names.has(one)),
  );
  expect(silent.filter((key) => !kept.test(key))).toEqual([]);
});

test('the generated pages are fresh', () => {
  for (const [path, text] of Object.entries(catalogues())) expect(read(path), `${path}: run npm run docs`).toBe(text);
});

test('the list of issues names who says each, and not who has it in a list', () => {
  const rows = read('docs/issues.md')
    .split('\n')
    .filter((line) => line.startsWith('| `'));
  const by = (place: string): string[] => rows.filter((row) => row.includes(place)).map((row) => row.split('`')[1]!);
  expect(by('`timeline/losses.ts`')).not.toContain('no-value');
  expect(by('`model/')).toEqual([]);
  expect(rows.filter((row) => /\|\s*\|$/.test(row))).toEqual([]);
});

test('the tree stands alone', () => {
  // Spelled apart, so that this file does not find itself.
  const elsewhere = ['work', 'home', 'root', 'Users'].map((name) => ['', name, ''].join('/'));
  const text = files.filter((path) => /\.(ts|json|md|html|css|csv|txt)$/.test(path) && path !== 'package-lock.json');
  const pointing = text.filter((path) => {
    const content = read(path).replaceAll(/https?:\/\/\S+/g, '');
    return elsewhere.some((folder) => new RegExp(`(^|[\\s"'\`(])${folder}`, 'm').test(content));
  });
  expect(pointing).toEqual([]);
});

test('links in the pages lead somewhere', () => {
  const pages = files.filter((path) => path.endsWith('.md'));
  const dead = pages.flatMap((page) =>
    [...read(page).matchAll(/\]\(([^)\s#]+)(?:#[^)]*)?\)/g)]
      .map((match) => match[1]!)
      .filter((target) => !/^[a-z]+:/.test(target))
      .filter((target) => !existsSync(join(home, dirname(page), target)))
      .map((target) => `${page}: ${target}`),
  );
  expect(dead).toEqual([]);
});

test('files that the pages name are there', () => {
  const rooms = ['', 'src/', 'src/writers/', 'tests/'];
  const named = ['README.md', 'DEVELOPERS.md', ...files.filter((path) => /^docs\/[^/]+\.md$/.test(path))].flatMap(
    (page) =>
      [...read(page).matchAll(/`((?:[\w-]+\/)*[\w.-]+\.(?:ts|py|css|html))`/g)]
        .map((match) => match[1]!)
        .filter((path) => path.includes('/') || /\.(ts|py)$/.test(path))
        .filter((path) =>
          path.includes('/')
            ? !rooms.some((room) => files.includes(room + path))
            : !files.some((file) => file.endsWith(`/${path}`)),
        )
        .map((path) => `${page}: ${path}`),
  );
  expect(named).toEqual([]);
});

test('DEVELOPERS.md has a paragraph for every folder', () => {
  const text = read('DEVELOPERS.md');
  const rooms = readdirSync(join(home, 'src')).map((name) =>
    statSync(join(home, 'src', name)).isDirectory() ? `src/${name}/` : `src/${name}`,
  );
  const missing = [...rooms, 'templates/', 'tests/', 'sample-data/', 'docs/'].filter(
    (room) => !text.includes(`\`${room}\``),
  );
  expect(missing).toEqual([]);
});

test('the changelog begins with this version', () => {
  const { version } = JSON.parse(read('package.json')) as { version: string };
  expect(/^## (\S+)/m.exec(read('docs/changelog.md'))?.[1]).toBe(version);
});

test('each run of the suite stands in its own time zone', () => {
  const zone = process.env.TZ;
  expect(new Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(zone);
  // 12:00 UTC on 1 January: noon in UTC, 01:00 the next day in New Zealand (UTC+13 in summer, IANA time zone database).
  expect(new Date(Date.UTC(2026, 0, 1, 12)).getHours()).toBe(zone === 'UTC' ? 12 : 1);
});

test('packages of one machine are not in the tree: a link among the files would take the place of the real folder', () => {
  const listed = spawnSync('git', ['ls-files', 'node_modules'], { cwd: home, encoding: 'utf8' });
  expect(listed.stdout?.trim() ?? '').toBe('');
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { transformSync } from 'esbuild';
import { expect, test } from 'vitest';

/**
 * Floors, from the ground up. A file may import from its own folder and from floors below its own; rooms on one floor do not
 * know each other. The pages of docs/ print the examples that the tests run, so build/ may import tests as well.
 */
const FLOORS = [
  ['model'],
  ['units.ts', 'once.ts', 'bytes', 'time', 'stats', 'schemas'],
  ['readers'],
  ['timeline'],
  ['targets'],
  ['comparing'],
  ['visits'],
  ['occasions'],
  ['measures', 'indices'],
  ['findings'],
  ['topics'],
  ['analyse.ts'],
  ['language'],
  ['charts'],
  ['pages'],
  ['compose.ts'],
  ['writers'],
  ['papers'],
  ['clinic'],
  ['index.ts'],
  ['cli', 'page'],
  ['build'],
];

/** Which room may import a package. Whatever is not listed is imported nowhere in src. */
const LIBRARIES: Record<string, string> = {
  'd3-array': 'stats',
  '@stdlib/math-base-special-atan': 'stats',
  '@stdlib/math-base-special-exp': 'stats',
  '@stdlib/math-base-special-ln': 'stats',
  '@stdlib/math-base-special-log10': 'stats',
  '@stdlib/math-base-special-pow': 'stats',
  zod: 'schemas',
  'd3-scale': 'charts',
  'd3-shape': 'charts',
  'intl-messageformat': 'language',
  pdfkit: 'writers/pdf',
  fontkit: 'writers/pdf',
  'bidi-js': 'writers/pdf',
  jsdom: 'cli',
  fflate: 'bytes',
  '@noble/hashes/legacy.js': 'bytes',
  '@noble/hashes/sha2.js': 'bytes',
  'read-excel-file/universal': 'readers',
  '@e965/xlsx': 'readers',
  tinypool: 'cli/clinic',
  bullmq: 'cli/clinic',
  ioredis: 'cli/clinic',
  commander: 'cli',
  esbuild: 'build',
};

const DOORS = ['cli', 'page', 'build'];
const src = new URL('../src/', import.meta.url).pathname;

/** Rooms that only read the outside world's clock, disk or process by name are found by these words. */
const WORLD = [
  /\bDate\.now\b/,
  /\bnew Date\(\s*\)/,
  /\bMath\.random\b/,
  /\bperformance\.now\b/,
  /\bcrypto\.(randomUUID|getRandomValues)\b/,
  /\bfetch\(/,
  /\bDateTime\.(now|local\(\))/,
  /\bresolvedOptions\(\)\.timeZone\b/,
];

/** What Node has and an engine of a browser has not, by its name or by a way round it. */
const NODES_OWN = [
  /\b(?:Buffer|process|require|setImmediate|clearImmediate|__dirname|__filename)\b/,
  /\b(?:global|globalThis)\b/,
  /\bimport\.meta\b/,
  /\bimport\(\s*[^'\s]/,
];

interface File {
  path: string;
  room: string;
  text: string;
  code: string;
  imports: string[];
}

const files: File[] = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts'))
  .sort()
  .map((path) => {
    const text = readFileSync(join(src, path), 'utf8');
    const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
    const imports = [
      ...code.matchAll(/^(?:import|export)\b[^'"]*?\bfrom\s*'([^']+)'/gm),
      ...code.matchAll(/^import\s*'([^']+)'/gm),
      ...code.matchAll(/\bimport\(\s*'([^']+)'/g),
    ].map((match) => match[1]!);
    return { path, room: path.split('/')[0]!, text, code, imports };
  });

const floorOf = (room: string): number => FLOORS.findIndex((floor) => floor.includes(room));
const breaches = (look: (file: File) => string[]): string[] =>
  files.flatMap((file) => look(file).map((what) => `${file.path}: ${what}`));

test('every room stands on a floor', () => {
  expect(breaches((f) => (floorOf(f.room) < 0 ? ['no floor'] : []))).toEqual([]);
});

test('imports descend', () => {
  expect(
    breaches(({ path, room, imports }) =>
      imports
        .filter((name) => name.startsWith('.'))
        .filter((name) => {
          const target = new URL(name, `file:///${path}`).pathname.slice(1);
          const brought = (room === 'papers' || path === 'topics/order.ts') && /^templates\/.*\.json$/.test(target);
          if (target === 'package.json' || brought || (room === 'build' && target.startsWith('tests/'))) return false;
          const to = target.split('/')[0]!;
          return to !== room && !(floorOf(to) >= 0 && floorOf(to) < floorOf(room));
        }),
    ),
  ).toEqual([]);
});

test('no circle of imports, but of types alone', () => {
  const types = /^(?:import|export)\s+type\b.*$|^(?:import|export)\s+\{(?:\s*type [^,}]+,?)+\s*\}\s*from.*$/gm;
  const needs = new Map(
    files.map(({ path, code }) => [
      path,
      [...code.replace(types, '').matchAll(/(?:\bfrom\s*|\bimport\(\s*)'(\.[^']+)'/g)].map(([, name]) =>
        new URL(name!, `file:///${path}`).pathname.slice(1),
      ),
    ]),
  );
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (path: string, way: string[]): void => {
    if (way.includes(path)) circles.push([...way.slice(way.indexOf(path)), path].join(' > '));
    if (done.has(path) || way.includes(path)) return;
    for (const next of needs.get(path) ?? []) walk(next, [...way, path]);
    done.add(path);
  };
  for (const path of needs.keys()) walk(path, []);
  expect(circles).toEqual([]);
});

test('the nouns hold no code', () => {
  const code = (text: string): string => transformSync(text, { loader: 'ts', minify: true }).code.trim();
  expect(files.filter(({ room, text }) => room === 'model' && code(text) !== '').map(({ path }) => path)).toEqual([]);
});

test('a relative import names its file', () => {
  expect(
    breaches(({ imports }) => imports.filter((name) => name.startsWith('.') && !/\.(ts|json)$/.test(name))),
  ).toEqual([]);
});

test('each library has one room', () => {
  expect(
    breaches(({ path, imports }) =>
      imports.filter((name) => {
        if (name.startsWith('.') || name.startsWith('node:')) return false;
        const room = LIBRARIES[name];
        return room === undefined || !path.startsWith(`${room}/`);
      }),
    ),
  ).toEqual([]);
});

test('the floor plan names each library beside its room', () => {
  const plan = /```([^`]*DOOR[^`]*)```/.exec(readFileSync(join(src, '../DEVELOPERS.md'), 'utf8'))?.[1] ?? '';
  const inBrackets = [...plan.matchAll(/\[([^\]]+)\]/g)].flatMap((match) => match[1]!.split(/[\s,;:]+/));
  const shipped = Object.entries(LIBRARIES).filter(([, room]) => room !== 'build');
  const nameOf = (path: string): string => /^(?:@[^/]+\/)?[^/]+/.exec(path)![0];
  // A family of small packages may stand there by its common name alone.
  const stands = (name: string): boolean => inBrackets.includes(name) || inBrackets.includes(name.split('/')[0]!);
  expect(shipped.map(([name]) => nameOf(name)).filter((name) => !stands(name))).toEqual([]);
});

test('nothing below the door needs Node: it runs in any engine', () => {
  expect(
    breaches(({ room, code, imports }) =>
      DOORS.includes(room)
        ? []
        : [
            ...imports.filter((name) => name.startsWith('node:')),
            ...NODES_OWN.filter((word) => word.test(code)).map((word) => String(word)),
          ],
    ),
  ).toEqual([]);
});

test('the page runs in a browser, and its own script is its own alone', () => {
  const ofPage = files.filter(({ room }) => room === 'page');
  expect(ofPage.flatMap(({ imports }) => imports.filter((name) => name.startsWith('node:')))).toEqual([]);
  // Everything else is the worker's: types may be looked at, nothing of them is in the script.
  const typesOnly = /^(?:import|export)\s+type\b[^;]*;/gm;
  const brought = ofPage
    .filter(({ path }) => !path.startsWith('page/worker/'))
    .flatMap(({ path, code }) =>
      [...code.replace(typesOnly, '').matchAll(/from\s*'(\.[^']+)'/g)]
        .map(([, name]) => new URL(name!, `file:///${path}`).pathname.slice(1))
        .filter((target) => !target.startsWith('page/') || target.startsWith('page/worker/'))
        .map((target) => `${path}: ${target}`),
    );
  expect(brought).toEqual([]);
  // No storage of any sort, and nothing that sends.
  const out =
    /\b(localStorage|sessionStorage|indexedDB|caches|cookie|serviceWorker|fetch|XMLHttpRequest|WebSocket|EventSource|sendBeacon)\b/;
  expect(ofPage.filter(({ code }) => out.test(code)).map(({ path }) => path)).toEqual([]);
});

test('nothing below the door knows the clock or chance', () => {
  expect(
    breaches(({ room, code }) =>
      DOORS.includes(room) ? [] : WORLD.filter((word) => word.test(code)).map((word) => String(word)),
    ),
  ).toEqual([]);
});

test('heavy libraries load only when their output is asked for', () => {
  // From the door and the library, the PDF writer is reached by `import()` only.
  const eager = breaches(({ room, code }) =>
    ['cli', 'index.ts', 'papers', 'clinic'].includes(room)
      ? [...code.matchAll(/^(?:import|export)\s(?!type\b)[^;]*from\s*'([^']*writers\/(?:pdf|html)[^']*)'/gm)].map(
          (m) => m[1]!,
        )
      : [],
  );
  expect(eager).toEqual([]);
});

test('two levels of folder, no drawer for odds and ends, no default exports, no any', () => {
  expect(
    breaches(({ path, code }) => {
      const found: string[] = [];
      if (path.split('/').length > 3) found.push('too deep');
      if (/(^|\/)(utils?|helpers?|common|misc|shared)(\.ts|\/)/.test(path)) found.push('a drawer for odds and ends');
      if (/\bexport\s+default\b/.test(code)) found.push('default export');
      if (/(:\s*any\b|\bas any\b|<any>)/.test(code)) found.push('any');
      return found;
    }),
  ).toEqual([]);
});

test('no arithmetic that engines do differently', () => {
  // ECMA-262, 21.3: these are "implementation-approximated". + - * / and the square root are not.
  const own =
    /\bMath\s*\.\s*(a?(cos|sin|tan)h?|atan2|cbrt|exp|expm1|hypot|log|log10|log1p|log2|pow)\b|\bMath\s*\[|\*\*/;
  expect(breaches(({ code }) => (own.test(code) ? [own.exec(code)![0]] : []))).toEqual([]);
});

test('no form of a language that engines know differently', () => {
  // Which plural a number takes and how codes are put in order are the same in every engine tried; a table on the web
  // page is put in order for the eyes of who clicks.
  const own = /\bIntl\.(?!PluralRules\b|Locale\b|Collator\b)|\.toLocale\w+|\.localeCompare\b/;
  const homes = ['writers/html/script.ts'];
  expect(
    breaches(({ path, room, code }) =>
      room !== 'build' && !homes.includes(path) && own.test(code) ? [own.exec(code)![0]] : [],
    ),
  ).toEqual([]);
});

test('one rule, one place', () => {
  // What was written again and again before it had a place of its own: a search by halves, the length of a day, what a
  // consensus asks for, the account of a file, JSON that steers a run.
  const only = (pattern: RegExp, homes: string[]): string[] =>
    files.filter(({ path, code }) => pattern.test(code) && !homes.includes(path)).map(({ path }) => path);
  // The others search by a rule of their own: the last not after an instant, members of a list, pairs of a font; and
  // what solves for a number or an hour halves no list.
  const lists = ['stats/sorted.ts', 'timeline/notes.ts', 'occasions/signal.ts', 'writers/pdf/openType.ts'];
  const halves = [...lists, 'stats/distributions.ts', 'time/zone.ts'];
  expect(only(/\(low \+ high/, halves)).toEqual([]);
  expect(only(/\bconst (MINUTE|HOUR|DAY)(_MS|_MINUTES)? *=/, ['time/calendar.ts'])).toEqual([]);
  expect(only(/\bconst (SEEN_SHARE|NIGHT_END|ENOUGH_DAYS) *=/, ['targets/consensus.ts'])).toEqual([]);
  expect(only(/\bhash: fingerprint\(input/, ['readers/account.ts', 'readers/table/wideTable.ts'])).toEqual([]);
  expect(only(/\bcreateHash\b/, ['cli/ownHash.ts'])).toEqual([]);
  expect(only(/\bjitless\s*:/, ['schemas/jitless.ts'])).toEqual([]);
  expect(only(/set-aside\.csv|patient-paper\.|-snapshot-|-visit-/, ['papers/resultNames.ts'])).toEqual([]);
  const zodWithout = files.filter(
    ({ imports }) => imports.includes('zod') && !imports.some((one) => one.endsWith('/jitless.ts')),
  );
  expect(zodWithout.map(({ path }) => path)).toEqual(['schemas/jitless.ts']);
});

test('files are short', () => {
  // A list that is generated is not read from top to bottom.
  const written = files.filter(({ text }) => !text.startsWith('// Written by `npm run docs`'));
  const lengths = written.map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }));
  const sorted = lengths.map(({ lines }) => lines).sort((a, b) => a - b);
  expect(sorted[Math.floor(sorted.length / 2)]!, 'median').toBeLessThan(65);
  expect(lengths.filter(({ lines }) => lines > 230)).toEqual([]);
  expect(lengths.filter(({ lines }) => lines > 200).length / lengths.length, 'share over 200').toBeLessThan(0.012);
});

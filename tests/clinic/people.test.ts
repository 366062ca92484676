import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readManifest } from '../../src/clinic/manifest.ts';
import { manifestText } from '../../src/clinic/manifestText.ts';
import { findPeople, type Listing } from '../../src/clinic/people.ts';
import type { ManifestRow } from '../../src/model/clinic.ts';

const listing = (part: Partial<Listing>): Listing => ({
  exports: [],
  settings: [],
  folders: [],
  odd: [],
  closed: [],
  unknown: [],
  ...part,
});

/** `code: files` of everyone found, with the reason where nothing will be read. */
function peopleIn(found: Partial<Listing>, rows: ManifestRow[] = []): Record<string, string> {
  const all: Record<string, string[]> = {};
  for (const { code, files, wrong } of findPeople(listing(found), rows)) {
    all[code] = [...(all[code] ?? []), files.join(' ') + (wrong ? ` !${wrong.why}` : '')];
  }
  return Object.fromEntries(Object.entries(all).map(([code, texts]) => [code, texts.sort().join(' | ')]));
}

test.each<[string, Partial<Listing>, ManifestRow[], Record<string, string>]>([
  [
    'a subfolder is a person, with all that lies in it',
    { folders: ['A'], exports: ['A/s.csv', 'A/older/s.csv'] },
    [],
    { A: 'A/older/s.csv A/s.csv' },
  ],
  [
    'files of a kind that is not read are somebody, with the reason',
    { unknown: ['Ben.ods', 'Cleo.pages', 'Cleo__2.pages'], exports: ['A.csv'] },
    [],
    { A: 'A.csv', Ben: 'Ben.ods !unknownKind', Cleo: 'Cleo.pages Cleo__2.pages !unknownKind' },
  ],
  [
    'and nobody where another file is that person’s',
    { unknown: ['A.pdf', 'B/scan.pdf'], exports: ['A.csv', 'B/x.csv'], folders: ['B'] },
    [],
    { A: 'A.csv', B: 'B/x.csv' },
  ],
  ['a folder of nothing else says so', { unknown: ['A/x.ods', 'A/y.ods'], folders: ['A'] }, [], { A: ' !unknownKind' }],
  ['a file is a person', { exports: ['A.csv', 'B.txt'] }, [], { A: 'A.csv', B: 'B.txt' }],
  [
    'files that share a code are one person',
    { exports: ['A__notes.csv', 'A__sensor.csv', 'A.json'] },
    [],
    { A: 'A.json A__notes.csv A__sensor.csv' },
  ],
  [
    'a single underscore joins nobody',
    { exports: ['export_1.csv', 'export_2.csv'] },
    [],
    { export_1: 'export_1.csv', export_2: 'export_2.csv' },
  ],
  [
    'an empty subfolder is somebody who cannot be read',
    { folders: ['A', 'B'], exports: ['A/s.csv'] },
    [],
    { A: 'A/s.csv', B: ' !emptyFolder' },
  ],
  ['a link at the top is told', { odd: ['A.csv'] }, [], { 'A.csv': ' !link' }],
  ['a closed folder is told', { closed: [{ path: 'A', reason: 'EACCES' }] }, [], { A: ' !closed' }],
  [
    'a folder and a file with one code are neither read',
    { folders: ['A'], exports: ['A/s.csv', 'A.csv'] },
    [],
    { A: 'A.csv !twinCode | A/s.csv !twinCode' },
  ],
  [
    'a manifest gives codes',
    { folders: ['x'], exports: ['x/s.csv', 'y.csv'] },
    [
      { line: 2, person: 'x', code: 'P-1' },
      { line: 3, person: 'y.csv', code: 'P-2' },
    ],
    { 'P-1': 'x/s.csv', 'P-2': 'y.csv' },
  ],
  [
    'files to which a manifest gives one code are one person',
    { exports: ['x.csv', 'y.csv'] },
    [
      { line: 2, person: 'x.csv', code: 'P-1' },
      { line: 3, person: 'y.csv', code: 'P-1' },
    ],
    { 'P-1': 'x.csv y.csv' },
  ],
  [
    'folders to which a manifest gives one code are neither read',
    { folders: ['x', 'y'], exports: ['x/s.csv', 'y/s.csv'] },
    [
      { line: 2, person: 'x', code: 'P-1' },
      { line: 3, person: 'y', code: 'P-1' },
    ],
    { 'P-1': 'x/s.csv !twinCode | y/s.csv !twinCode' },
  ],
  [
    'settings in a folder give its code, and the manifest is nearer',
    {
      folders: ['x', 'y'],
      exports: ['x/s.csv', 'y/s.csv'],
      settings: ['x/settings.json', 'y/settings.json'],
      codes: new Map([
        ['x/settings.json', 'P-1'],
        ['y/settings.json', 'P-2'],
      ]),
    },
    [{ line: 2, person: 'y', code: 'P-3' }],
    { 'P-1': 'x/s.csv', 'P-3': 'y/s.csv' },
  ],
  [
    'a file whose name goes on from another’s is asked about, and nobody else',
    { exports: ['p001-notes.csv', 'p001.csv', 'p002.csv', 'Q__a.csv', 'Q__b.csv'] },
    [],
    {
      'p001-notes': 'p001-notes.csv !oneOrTwo',
      p001: 'p001.csv !oneOrTwo',
      p002: 'p002.csv',
      Q: 'Q__a.csv Q__b.csv',
    },
  ],
  [
    'the same code in the manifest makes them one',
    { exports: ['p001-notes.csv', 'p001.csv'] },
    [
      { line: 2, person: 'p001.csv', code: 'p001' },
      { line: 3, person: 'p001-notes.csv', code: 'p001' },
    ],
    { p001: 'p001-notes.csv p001.csv' },
  ],
  [
    'a code each makes them two; one line alone, or no code, leaves the question',
    { exports: ['a-notes.csv', 'a.csv', 'b-notes.csv', 'b.csv', 'c-log.csv', 'c-sensor.csv'] },
    [
      { line: 2, person: 'a.csv', code: 'a' },
      { line: 3, person: 'a-notes.csv', code: 'z' },
      { line: 4, person: 'b.csv', code: 'b' },
      { line: 5, person: 'c-log.csv' },
      { line: 6, person: 'c-sensor.csv' },
    ],
    {
      a: 'a.csv',
      z: 'a-notes.csv',
      b: 'b.csv !oneOrTwo',
      'b-notes': 'b-notes.csv !oneOrTwo',
      'c-log': 'c-log.csv !oneOrTwo',
      'c-sensor': 'c-sensor.csv !oneOrTwo',
    },
  ],
  [
    'a subfolder and a file that goes on from its name; numbers count on and ask nothing',
    {
      folders: ['D', 'D-E'],
      exports: ['D/s.csv', 'D-E/s.csv', 'D notes.csv', 'P.csv', 'P-1.csv', 'P-2.csv', 'x1.csv', 'x1 (1).csv'],
    },
    [],
    {
      D: 'D/s.csv !oneOrTwo',
      'D notes': 'D notes.csv !oneOrTwo',
      'D-E': 'D-E/s.csv',
      P: 'P.csv',
      'P-1': 'P-1.csv',
      'P-2': 'P-2.csv',
      x1: 'x1.csv !oneOrTwo',
      'x1 (1)': 'x1 (1).csv !oneOrTwo',
    },
  ],
  [
    'a row that names nothing in the folder is somebody too',
    { exports: ['x.csv'] },
    [{ line: 2, person: '../../etc/passwd', code: 'P-9' }],
    { x: 'x.csv', 'P-9': ' !noFile' },
  ],
  [
    'two rows for one person are a contradiction',
    { exports: ['x.csv'] },
    [
      { line: 2, person: 'x', code: 'P-1' },
      { line: 3, person: 'x', code: 'P-2' },
    ],
    { 'P-1': 'x.csv !twoRows' },
  ],
  [
    'a cell that cannot be used spoils its own person',
    { exports: ['x.csv', 'y.csv'] },
    [{ line: 2, person: 'x', wrong: { column: 'targets', actual: 'adlut' } }],
    { x: 'x.csv !manifestCell', y: 'y.csv' },
  ],
])('%s', (_, found, rows, expected) => {
  expect(peopleIn(found, rows)).toEqual(expected);
});

/** Names as hostile as a disk allows, few enough that they meet. */
const name = fc.constantFrom(
  'A',
  'a',
  'B',
  'P/1'.replace('/', '-'),
  '..',
  'con',
  'x__y',
  'x__z',
  'é',
  'e\u0301',
  '=1+1',
  '名',
);
const file = fc.tuple(name, fc.constantFrom('.csv', '.json', '')).map(([stem, end]) => `${stem}${end}`);
const path = fc.oneof(
  file,
  fc.tuple(name, file).map((parts) => parts.join('/')),
);
const row = fc.record(
  { line: fc.nat(), person: fc.oneof(path, name), code: name },
  { requiredKeys: ['line', 'person'] },
);

test('every file is one person’s, every row is somebody’s, and no two results share a folder on any disk', () => {
  fc.assert(
    fc.property(fc.uniqueArray(path), fc.array(row), fc.uniqueArray(name), (exports, rows, folders) => {
      const all = [
        ...new Set([...folders, ...exports.filter((one) => one.includes('/')).map((one) => one.split('/')[0]!)]),
      ];
      const people = findPeople(listing({ exports, folders: all }), rows as ManifestRow[]);
      expect(people.flatMap(({ files }) => files).sort()).toEqual([...exports].sort());
      const stems = people.map(({ stem }) => stem.normalize('NFC').toLowerCase());
      expect(new Set(stems).size).toBe(stems.length);
      for (const { stem } of people) expect(stem).toMatch(/^[^/\\.\p{Cc}][^/\\\p{Cc}]*$/u);
      // Two who share a code are never both read, nor one of them.
      for (const { code, wrong } of people) {
        if (people.filter((other) => other.code === code).length > 1) expect(wrong).toBeDefined();
      }
      const rowsUsed = people.filter(({ row: own, wrong }) => own !== undefined || wrong?.why === 'twoRows').length;
      if (rows.length > 0) expect(rowsUsed).toBeGreaterThan(0);
    }),
  );
});

test('a manifest made of what was found finds the same, and leaves open what is asked', () => {
  const seen = listing({
    folders: ['A', 'Berg, Ann'],
    exports: ['A/s.csv', 'Berg, Ann/s.csv', 'P-7__b.csv', 'P-7__a.csv', 'q-notes.csv', 'q.csv', 'r.csv', '=1.csv'],
  });
  const people = findPeople(seen);
  const { text, lines, leftOut } = manifestText(people);
  expect([lines, leftOut]).toEqual([6, ['=1']]);
  expect(text.split('\r\n')[0]).toBe('person,code,name,targets,unit,zone,language,visit,a1c');
  const read = readManifest(new TextEncoder().encode(text));
  const again = findPeople(seen, read.ok ? read.rows : []);
  const known = (some: typeof people) => some.map(({ row, ...rest }) => rest);
  expect(known(again)).toEqual(known(people));
  expect(people.map(({ code, by }) => `${code} ${by}`)).toEqual([
    '=1 file',
    'A folder',
    'Berg, Ann folder',
    'P-7 joined',
    'q asked',
    'q-notes asked',
    'r file',
  ]);
});

test('the order in which a disk lists names changes nothing', () => {
  const exports = ['B.csv', 'A__2.csv', 'C/s.csv', 'A__1.csv'];
  const there = findPeople(listing({ exports, folders: ['C'] }));
  expect(findPeople(listing({ exports: [...exports].reverse(), folders: ['C'] }))).toEqual(there);
});

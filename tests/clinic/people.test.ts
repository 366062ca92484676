import fc from 'fast-check';
import { expect, test } from 'vitest';
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

test('the order in which a disk lists names changes nothing', () => {
  const exports = ['B.csv', 'A__2.csv', 'C/s.csv', 'A__1.csv'];
  const there = findPeople(listing({ exports, folders: ['C'] }));
  expect(findPeople(listing({ exports: [...exports].reverse(), folders: ['C'] }))).toEqual(there);
});

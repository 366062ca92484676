import { expect, test } from 'vitest';
import { readManifest } from '../../src/clinic/manifest.ts';

const read = (text: string) => readManifest(new TextEncoder().encode(text));

test('columns in any order, delimiter by evenness, empty cells absent', () => {
  expect(read('code;person;visit;a1c;targets\nP-1;anna;2026-03-04;7,2;older\n\nP-2;./ben/;;;\n')).toEqual({
    ok: true,
    rows: [
      { line: 2, person: 'anna', code: 'P-1', visit: '2026-03-04', a1c: 7.2, targets: 'older' },
      { line: 4, person: 'ben', code: 'P-2' },
    ],
  });
});

test.each([
  ['targets', 'adlut'],
  ['unit', 'mg/dl'],
  ['zone', 'Mars/Olympus'],
  ['language', 'xx'],
  ['visit', '04.03.2026'],
  ['visit', '2026-02-30'],
  ['visit', '2026-03-04 24:10'],
  ['visit', '2026-03-04 9:10'],
  ['a1c', '53'],
  ['a1c', 'about 7'],
])('a wrong %s, %s, spoils its row and is told', (column, actual) => {
  const found = read(`person,${column}\nanna,${actual}\nben,\n`);
  expect(found).toEqual({
    ok: true,
    rows: [
      { line: 2, person: 'anna', wrong: { column, actual } },
      { line: 3, person: 'ben' },
    ],
  });
});

test.each([
  ['person,target\nanna,adult\n', 'target'],
  ['name,code\nanna,P-1\n', 'name, code'],
  ['person,person\nanna,ben\n', 'person'],
  ['', ''],
])('a first line that is not understood refuses the whole: %j', (text, actual) => {
  expect(read(text)).toMatchObject({ ok: false, actual });
});

test('what is no text is refused', () => {
  expect(readManifest(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3])).ok).toBe(false);
});

test('a visit may have its time', () => {
  const of = (cell: string) => read(`person;visit\nanna;${cell}\n`);
  expect(of('2026-03-04 09:30')).toMatchObject({ rows: [{ visit: '2026-03-04', time: '09:30' }] });
  expect(of('2026-03-04T14:05')).toMatchObject({ rows: [{ visit: '2026-03-04', time: '14:05' }] });
  expect(of('2026-03-04')).toEqual({ ok: true, rows: [{ line: 2, person: 'anna', visit: '2026-03-04' }] });
});

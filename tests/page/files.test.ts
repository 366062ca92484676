import { expect, test } from 'vitest';
import { look, put, type Shelf } from '../../src/page/worker/files.ts';

function found(...paths: string[]) {
  const shelf: Shelf = { bytes: new Map() };
  put(
    shelf,
    paths.map((path) => ({ path, bytes: new Uint8Array([1]) })),
  );
  return look(shelf, ({ why }) => why);
}

test('a folder of one person is one person, whatever lies with their exports', () => {
  const { whose, together } = found(
    'anna/settings.json',
    'anna/readings.csv',
    'anna/log.csv',
    'anna/README.md',
    'anna/.hidden',
    'anna/x-analysis.json',
  );
  expect(whose).toBe('one');
  expect(together).toMatchObject({
    ...{ stem: 'anna', settings: 'anna/settings.json' },
    files: ['anna/log.csv', 'anna/readings.csv'],
  });
});

test('folders in a folder are a person each, told apart as the folder run does', () => {
  const { whose, people } = found('clinic/P-1/a.csv', 'clinic/P-1/b.csv', 'clinic/P-2/a.csv', 'clinic/P-3/notes.doc');
  expect(whose).toBe('many');
  expect(people.map(({ code, files, wrong }) => [code, files.length, wrong])).toEqual([
    ['P-1', 2, undefined],
    ['P-2', 1, undefined],
    ['P-3', 0, 'unknownKind'],
  ]);
});

test('files side by side are asked for, and one file is nobody to ask about', () => {
  expect(found('readings.csv', 'log.csv').whose).toBe('ask');
  expect(found('P-1__a.csv', 'P-1__b.csv').whose).toBe('one');
  expect(found('readings.csv').whose).toBe('one');
  expect(found('readings.csv').together.stem).toBe('readings');
  expect(found('letter.doc').whose).toBe('none');
});

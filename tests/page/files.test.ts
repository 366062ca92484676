import { expect, test } from 'vitest';
import { emptyShelf, put, visitsAt } from '../../src/page/worker/files.ts';
import { look, type Voice } from '../../src/page/worker/who.ts';

const voice: Voice = {
  wrong: ({ why }) => why,
  toldBy: (people, manifest) => `${people.length} ${manifest}`,
  refused: (of, actual) => `${of} ${actual}`,
  heavy: ({ megabytes }) => `${megabytes} MB`,
  earlier: (files, people) => `${files} of ${people}`,
};

function found(...paths: string[]) {
  return lookedAt(Object.fromEntries(paths.map((path) => [path, '\u0001'])));
}

function lookedAt(files: Record<string, string>) {
  const shelf = emptyShelf();
  put(
    shelf,
    Object.entries(files).map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) })),
  );
  return look(shelf, [], '2026-06-01', voice).found;
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

test('a folder that settings name to compare with holds earlier visits and nobody of now', () => {
  const earlier = { 'anna/earlier/old.csv': 'x', 'anna/earlier/A-visit-2026-03-29.json': '{}' };
  const now = { 'anna/readings.csv': 'x', 'anna/log.csv': 'x', ...earlier };
  for (const compare of ['earlier', './earlier/', ['earlier']]) {
    const { whose, together, passedOver } = lookedAt({ ...now, 'anna/settings.json': JSON.stringify({ compare }) });
    expect(whose).toBe('one');
    expect(together).toMatchObject({
      files: ['anna/log.csv', 'anna/readings.csv'],
      visits: ['anna/earlier/A-visit-2026-03-29.json'],
    });
    expect(passedOver).toContain('old.csv');
  }
  expect(lookedAt({ ...now, 'anna/settings.json': '{"compare":"previous"}' }).whose).toBe('many');
});

test('a path to compare with is a file, or the visit files that lie in a folder and no deeper', () => {
  const shelf = emptyShelf();
  const paths = ['e/A-visit-2026-03-29.json', 'e/A-visit-2026-02-01.json', 'e/x.csv', 'e/f/A-visit-2026-01-01.json'];
  put(
    shelf,
    paths.map((path) => ({ path, bytes: new Uint8Array() })),
  );
  expect(visitsAt(shelf, 'e')).toEqual(['e/A-visit-2026-02-01.json', 'e/A-visit-2026-03-29.json']);
  expect(visitsAt(shelf, 'e/x.csv')).toEqual(['e/x.csv']);
  expect(visitsAt(shelf, 'elsewhere')).toEqual([]);
});

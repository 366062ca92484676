import { cpSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { home } from './run.ts';

const hostile = (name: string): string => join(home, 'sample-data/hostile', name);

/** What is broken, by code, and what the worklist says of it. */
export const BROKEN: Record<string, RegExp> = {
  'B-empty': /./,
  'B-header': /no glucose readings/i,
  'B-picture': /./,
  'B-prose': /./,
  'B-cut': /./,
  'B-two-people': /./,
  'B-units': /./,
  'B-day-orders': /./,
  'B-zeros': /./,
  'B-future': /./,
  'B-nothing': /holds no export/,
  scan: /of a kind that is not read: scan\.pdf/,
  'B-settings': /./,
  'B-missing': /line 4 of the manifest/,
  'B-cell': /targets = adlut/,
  'B-loop': /not followed/,
  'B-twin': /stands for more than one/,
  'B-same-1': /same readings lie with .*B-same-2/,
  'B-same-2': /same readings lie with .*B-same-1/,
};

/** Puts them into a folder; `all`: also what no list of files shows, an empty folder and a link. */
export function breakSome(folder: string, all = true): void {
  const person = (code: string, file: string): void => {
    mkdirSync(join(folder, code));
    cpSync(hostile(file), join(folder, code, file));
  };
  person('B-empty', 'empty.csv');
  person('B-header', 'header-only.csv');
  person('B-picture', 'binary.csv');
  person('B-prose', 'prose.txt');
  person('B-cut', 'not-json.json');
  person('B-two-people', 'two-people.csv');
  person('B-units', 'unit-changes-midway.csv');
  person('B-day-orders', 'both-day-orders.csv');
  person('B-zeros', 'zeros.csv');
  person('B-future', 'future.csv');
  if (all) mkdirSync(join(folder, 'B-nothing'));
  person('B-settings', 'newest-first.csv');
  writeFileSync(join(folder, 'B-settings/settings.json'), '{"unti":"mg/dL"}');
  person('B-cell', 'ragged.csv');
  if (all) symlinkSync(folder, join(folder, 'B-loop'));
  person('B-twin', 'lone-carriage-returns.csv');
  cpSync(hostile('summary-below.csv'), join(folder, 'B-twin.csv'));
  for (const code of ['B-same-1', 'B-same-2']) person(code, 'nul-bytes.csv');
  writeFileSync(
    join(folder, 'manifest.csv'),
    [
      'person,code,targets,visit,a1c',
      'P-0001,,older,2026-03-04,7.1',
      'B-cell,,adlut,,',
      '../../etc/passwd,B-missing,,,',
      '',
    ].join('\n'),
  );
  // Names that a shell, a spreadsheet or a path would take for something else.
  cpSync(hostile('blank-lines.csv'), join(folder, '=HYPERLINK(1)__$(id).csv'));
  cpSync(hostile('newest-first.csv'), join(folder, '%2e%2e%2fup.csv'));
  writeFileSync(join(folder, 'scan.pdf'), 'no export');
}

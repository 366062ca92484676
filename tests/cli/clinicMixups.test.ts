import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { putInPlace } from '../../src/cli/clinic/disk.ts';
import { takeTurn } from '../../src/cli/clinic/turn.ts';
import { walk } from '../../src/cli/clinic/walk.ts';
import { findMixUps } from '../../src/clinic/mixups.ts';
import { blank } from '../../src/clinic/outcome.ts';
import { findPeople } from '../../src/clinic/people.ts';
import type { Outcome } from '../../src/model/clinic.ts';
import { english } from '../support/english.ts';
import { madePerson } from '../support/people.ts';
import { listed, scratch } from './run.ts';

const HEAD = 'Time,Sensor glucose (mg/dL)\n';
const TINY = { days: 1, step: 60 };
const LOCK = '\u0005Ann\u0000';

/** What lies in everyone's folder and is nobody's. */
const EVERYWHERE: Record<string, string> = {
  'blank.csv': '',
  'header.csv': HEAD,
  '~$logbook.xlsx': LOCK,
  '.~lock.logbook.ods#': ',ann,desk,02.03.2026 08:00,file:///;',
  'notes.txt': 'Bring the reader and the logbook to the visit.\n',
  'form.csv': 'Time,Carbohydrate (g),Rapid insulin (IU),Note\n',
};
const names = Object.keys(EVERYWHERE);

/** True mix-ups, by the number of the folder: what is done to it, and with whom it is then mixed up. */
const MIXED: Record<number, { files: Record<string, string>; withNumber: number }> = {
  // The export of another.
  10: { files: { 'sensor.csv': madePerson(11, TINY).readings }, withNumber: 11 },
  // A longer export of another, in another layout, under another name.
  20: {
    files: {
      'export.csv': madePerson(21, TINY)
        .readings.replace('Sensor glucose (mg/dL)', 'Glucose mg/dL')
        .replaceAll(',', ';')
        .concat('2026-02-03 08:00;123\n'),
    },
    withNumber: 21,
  },
  // The logbook of another beside one's own readings.
  30: {
    files: {
      'sensor.csv': madePerson(30, TINY).readings,
      'logbook.csv': madePerson(31, TINY).notes,
    },
    withNumber: 31,
  },
  // A file that says whose it is.
  40: {
    files: { 'sensor.csv': `Patient: P-0042\n\n${madePerson(40, TINY).readings}` },
    withNumber: 41,
  },
  // A name that the manifest gives someone else.
  50: {
    files: { 'sensor.csv': `Name: Ann Berg\n\n${madePerson(50, TINY).readings}` },
    withNumber: 51,
  },
};

test('200 folders with forms, empty files, locks and notes in them: no paper withheld wrongly, none given wrongly', async () => {
  const folder = scratch();
  const mixed = new Set<string>();
  for (let number = 0; number < 200; number++) {
    const { code, readings, notes } = madePerson(number, TINY);
    const at = join(folder, 'in', code);
    mkdirSync(at, { recursive: true });
    const own = MIXED[number]?.files ?? { 'sensor.csv': readings, 'logbook.csv': notes };
    for (const [name, text] of Object.entries(own)) writeFileSync(join(at, name), text);
    // Three of them each, so that every pair of two stands with many people.
    for (let i = 0; i < 3; i++) {
      const name = names[(number * 7 + i * (1 + (number % 5))) % names.length]!;
      writeFileSync(join(at, name), EVERYWHERE[name]!);
    }
    const other = MIXED[number]?.withNumber;
    if (other !== undefined) for (const one of [number, other]) mixed.add(madePerson(one, TINY).code);
  }
  const seen = walk(join(folder, 'in'), join(folder, 'out'));
  const people = findPeople(seen, [{ line: 2, person: 'P-0052', name: 'Ann Berg' }]);
  const outcomes: Outcome[] = [];
  for (const person of people) {
    const task = {
      ...{ person, folder: join(folder, 'in'), out: join(folder, 'out'), options: {}, today: '2026-06-01' },
      make: { html: false, numbers: false, attach: false, fhir: false, fhirReadings: false, further: false },
      dry: true,
    };
    const tools = { version: 'test', wordsFor: () => ({ words: english, missing: [], hash: '' }) };
    outcomes.push((await takeTurn(task, tools as never)).outcome);
  }
  expect(outcomes.filter(({ facts }) => facts === null).map(({ code, refusals }) => [code, refusals])).toEqual([]);
  const withheld = findMixUps(outcomes);
  expect([...withheld.keys()].sort()).toEqual([...mixed].sort());
  expect(Object.fromEntries([...withheld].map(([code, { why }]) => [code, why]))).toMatchObject({
    ...{ 'P-0011': 'sameFile', 'P-0021': 'sameReadings', 'P-0031': 'sameFile' },
    ...{ 'P-0041': 'otherCode', 'P-0051': 'otherCode' },
  });
}, 60_000);

test('a link that lies in the results is not followed: nothing is written or deleted where it leads', async () => {
  const folder = scratch();
  mkdirSync(join(folder, 'elsewhere'));
  mkdirSync(join(folder, 'out'));
  writeFileSync(join(folder, 'elsewhere/record.json'), '{}');
  symlinkSync(join(folder, 'elsewhere'), join(folder, 'out/P-1'));
  const outcome = blank({ code: 'P-1', stem: 'P-1', files: [] }, { key: '', printed: '2026-06-01', version: 'test' });
  const put = () =>
    putInPlace(
      join(folder, 'out/P-1'),
      outcome,
      [{ what: 'interpretation', name: 'P-1-interpretation.txt', bytes: 'x' }],
      null,
    );
  expect(put).toThrow(expect.objectContaining({ code: 'ELOOP' }));
  expect(listed(join(folder, 'elsewhere'))).toEqual(['record.json']);
  rmSync(join(folder, 'out/P-1'));
  put();
  expect(listed(join(folder, 'out/P-1'))).toEqual(['P-1-interpretation.txt', 'record.json']);
});

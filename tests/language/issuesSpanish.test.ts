import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { issueSaid, speakerOf } from '../../src/language/index.ts';
import type { Choice, Input, Issue } from '../../src/model/input.ts';
import { evidenceText, valueText } from '../../src/pages/understoodTexts.ts';
import { readInputs } from '../../src/readers/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { everyMessage, readings } from '../support/everyMessage.ts';
import { home, stories, wordsOf } from '../support/story.ts';

// What is said of files in Spanish holds no word but Spanish ones and those of the file itself, whatever the file is.
const speaker = speakerOf(wordsOf('es'), { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
const wordsIn = (text: string): string[] => (text.match(/\p{L}+/gu) ?? []).map((one) => one.toLowerCase());
const known = new Set(everyMessage(wordsOf('es') as object).flatMap(([, text]) => readings(text).flatMap(wordsIn)));
/** Names of options, letters and marks that are nobody's language. */
for (const sign of 'mg dl mmol l min unit zone layout date order day first month from to days accept losses acceptlosses set aside csv utf le be windows'.split(
  ' ',
))
  known.add(sign);

const text = (name: string, ...lines: string[]): Input => ({ name, bytes: new TextEncoder().encode(lines.join('\n')) });
const bytes = (name: string, ...list: number[]): Input => ({ name, bytes: Uint8Array.from(list) });
const rows = (count: number, row: (i: number) => string): string[] => Array.from({ length: count }, (_, i) => row(i));

const odd: Record<string, Input[]> = {
  'a picture called .csv': [bytes('a.csv', 0x89, 0x50, 0x4e, 0x47, 1, 2, 3)],
  'a photograph called .csv': [bytes('a.csv', 0xff, 0xd8, 0xff, 1, 2)],
  'a document': [bytes('a.csv', 0x25, 0x50, 0x44, 0x46, 0x2d)],
  'an old workbook': [bytes('a.csv', 0xd0, 0xcf, 0x11, 0xe0, 0, 0)],
  'a broken zip': [bytes('a.csv', 0x50, 0x4b, 3, 4, 9, 9)],
  'a broken gzip': [bytes('a.csv', 0x1f, 0x8b, 9, 9)],
  'four bytes a letter': [bytes('a.csv', 0xff, 0xfe, 0, 0, 65, 0, 0, 0)],
  noise: [bytes('a.csv', ...rows(64, String).map((_, i) => (i * 7) % 32))],
  'FHIR in XML': [text('a.json', '<Bundle xmlns="http://hl7.org/fhir"></Bundle>')],
  'two columns of glucose': [
    text(
      'a.csv',
      'Time,Sensor 1 (mg/dL),Sensor 2 (mg/dL)',
      ...rows(9, (i) => `2026-01-1${i} 08:00,${100 + i},${200 + i}`),
    ),
  ],
  'two delimiters': [text('a.csv', ...rows(9, (i) => `a,${i};b`))],
  'day numbers': [text('a.csv', 'Time,Glucose (mg/dL)', ...rows(9, (i) => `${41000 + i}.25,100`))],
  'a clock without halves': [
    text(
      'a.csv',
      'Time;Glucose (mg/dL)',
      ...rows(700, (i) => `2026-01-14 ${((i % 144) % 12) + 1}:${String(i % 60).padStart(2, '0')};100`),
    ),
  ],
  'finger sticks': [text('a.csv', 'Time,Glucose (mg/dL)', ...rows(9, (i) => `2026-01-1${i} 08:00,${100 + i}`))],
  'amounts without a unit': [
    text('a.csv', 'Time,Glucose (mg/dL),Insulin,Carbs', ...rows(9, (i) => `2026-01-14 08:0${i},${100 + i},2,30`)),
  ],
  'two zones': [
    text(
      'a.csv',
      'Time,Time zone,Glucose (mg/dL)',
      '2026-01-14 08:00,Europe/Helsinki,100',
      '2026-01-14 08:05,Asia/Tokyo,101',
    ),
  ],
  'files of two zones': [
    text('a.csv', 'Europe/Rome', 'Time,Glucose (mg/dL)', '2026-01-14 08:00,100'),
    text('b.csv', 'Asia/Tokyo', 'Time,Glucose (mg/dL)', '2026-01-14 08:00,100'),
  ],
  'world time': [text('a.csv', 'Time,Glucose (mg/dL)', ...rows(9, (i) => `2026-01-14T08:0${i}:00Z,100`))],
  'some offsets': [text('a.csv', 'Time,Glucose (mg/dL)', '2026-01-14T08:00:00+02:00,100', '2026-01-14 08:05,101')],
  'values that are none': [
    text(
      'a.csv',
      'Time,Glucose (mg/dL)',
      ...rows(9, (i) => `2026-01-14 08:0${i},${['2000', 'x', '5 g', '0', '04/05', '', 'LOW', '"', '39'][i]}`),
    ),
  ],
  'two readings of one time': [text('a.csv', 'Time,Glucose (mg/dL)', '2026-01-14 08:00,100', '2026-01-14 08:00,150')],
  'a manifest': [
    text('a.json', '{"transactionTime":"2026-01-01","output":[{"url":"x/Observation.ndjson","count":3}],"error":[{}]}'),
  ],
  'a status and no value': [
    text(
      'a.json',
      JSON.stringify({
        resourceType: 'Observation',
        code: { coding: [{ system: 'http://loinc.org', code: '99504-3' }] },
        effectiveDateTime: '2026-01-14T08:00:00Z',
      }),
    ),
    text(
      'b.json',
      JSON.stringify({
        resourceType: 'Observation',
        status: 'final',
        code: { coding: [{ system: 'http://loinc.org', code: '99504-3' }] },
        effectiveDateTime: '2026-01-14T08:00:00Z',
      }),
    ),
  ],
};
for (const folder of ['hostile', ...stories])
  for (const { name } of readdirSync(join(home, 'sample-data', folder), { withFileTypes: true }).filter(
    (one) => one.isFile() && !/^(README|settings|expected)/.test(one.name),
  ))
    odd[`${folder}/${name}`] = [{ name, bytes: new Uint8Array(readFileSync(join(home, 'sample-data', folder, name))) }];

/** The file's own texts in what is told of it. */
function ownTexts(given: unknown): string[] {
  if (typeof given === 'string') return [given];
  if (typeof given !== 'object' || given === null) return [];
  return Object.entries(given).flatMap(([name, one]) =>
    ['is', 'order', 'role', 'code'].includes(name) ? [] : ownTexts(one),
  );
}

function foreign(said: string, given: Choice | Issue): string[] {
  const own = new Set(ownTexts(given).flatMap(wordsIn));
  const left = wordsIn(said).filter((word) => !known.has(word) && !own.has(word));
  return left.length > 0 ? [`${left.join(', ')} in "${said}"`] : [];
}

test.each(Object.entries(odd))('%s', (_, inputs) => {
  const files = readInputs(inputs, { today: '2026-07-01' });
  const issues = [...files.flatMap((file) => file.issues), ...buildTimeline(files, {}).issues];
  const choices = files.flatMap((file) => file.choices);
  expect(issues.length + choices.length).toBeGreaterThan(0);
  expect([
    ...issues.flatMap((issue) => {
      return foreign(speaker.repeat(issueSaid(issue)), {
        ...issue,
        origin: issue.origin ?? { file: inputs[0]!.name, line: 0 },
      });
    }),
    ...choices.flatMap((choice) =>
      foreign(
        `${speaker.say(`choices.${choice.id}`)}: ${valueText(speaker, choice)} (${evidenceText(speaker, choice)})`,
        choice,
      ),
    ),
  ]).toEqual([]);
});

import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, it } from 'vitest';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { number, stamp, text, workbookOf } from '../support/workbook.ts';
import { rows, TODAY } from './digest.ts';
import { sound } from './sound.ts';

// Good files of each kind, damaged in every way that comes to mind. In the suite for a moment; for minutes with
// FUZZ_SECONDS=120 in the environment. Whatever comes: no throw, no row lost, nothing that is not a number.
const seconds = Number(process.env.FUZZ_SECONDS ?? 0);
const data = (path: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../data/${path}`, import.meta.url)));
const bytes = (content: string): Uint8Array => new TextEncoder().encode(content);

/** Small inputs are damaged more often in the same time, and in places that matter. */
const someLines = (path: string, count: number): Uint8Array =>
  bytes(`${Buffer.from(data(path)).toString('utf8').split('\n').slice(0, count).join('\n')}\n`);
const someEntries = (path: string, count: number): Uint8Array => {
  const bundle = JSON.parse(Buffer.from(data(path)).toString('utf8')) as { entry: unknown[] };
  return bytes(JSON.stringify({ ...bundle, entry: bundle.entry.slice(0, count) }, null, 1));
};

const table = `Time,Sensor glucose (mg/dL),Carbs (g),Insulin (IU),Note\n${rows(40, (i, t) => `${t.slice(0, 16)},${100 + i},${i % 9 ? '' : 30},${i % 7 ? '' : 4},"x, ${i}"`)}`;
const kinds: Record<string, [name: string, bytes: Uint8Array][]> = {
  delimited: [
    ['a.csv', bytes(table)],
    [
      'a.csv',
      bytes(
        `Zone;Europe/Helsinki\nDatum;Uhrzeit;Glukose (mmol/L)\n${rows(30, (i, t) => `${t.slice(8, 10)}.${t.slice(5, 7)}.2026;${t.slice(11, 16)};${i % 5 ? `5,${i % 10}` : 'LO'}`)}`,
      ),
    ],
  ],
  'wide-table': [
    [
      'a.csv',
      bytes(`Glucose (mg/dL),08:00,08:05,08:10,08:15\n${rows(9, (i) => `2026-01-${10 + i},${100 + i},,102,LOW`)}`),
    ],
  ],
  'json-records': [
    [
      'a.json',
      bytes(
        JSON.stringify(
          Array.from({ length: 30 }, (_, i) => ({
            time: `2026-01-14T08:${10 + i}:00+02:00`,
            glucose: { value: 100 + i, unit: 'mg/dL' },
            note: 'x',
          })),
          null,
          1,
        ),
      ),
    ],
  ],
  fhir: [
    ['a.json', someEntries('fhir/one-hour-molar.json', 8)],
    ['a.ndjson', someLines('fhir/ndjson/Observation.ndjson', 8)],
    ['a.ndjson', data('fhir/ndjson/MedicationAdministration.ndjson')],
    [
      'a.ndjson',
      bytes(
        '{"resourceType":"Bundle","type":"transaction","entry":[{"request":{"method":"DELETE","url":"Observation/a"}}]}\n',
      ),
    ],
    ['a.json', data('fhir/ndjson/manifest.json')],
  ],
  'open-mhealth': [
    ['a.json', data('openmhealth/older-header.json')],
    ['a.ndjson', someLines('openmhealth/one-hour-data-points.ndjson', 8)],
  ],
  workbook: [
    [
      'a.xlsx',
      workbookOf({
        Log: {
          1: [text('Time'), text('Glucose (mg/dL)')],
          2: [stamp(46027.3), number(102)],
          3: [stamp(46027.4), number(5)],
        },
      }),
    ],
  ],
  archives: [
    ['a.zip', zipSync({ 'a.csv': bytes(table), 'b/c.json': data('openmhealth/older-header.json') })],
    ['a.csv.gz', gzipSync(bytes(table))],
  ],
};

const BITS = [
  '"',
  ',',
  ';',
  '\n',
  '\r',
  '{',
  '}',
  '[',
  ']',
  ':',
  'null',
  '-1',
  '1e999',
  'NaN',
  '2026-02-30',
  '99:99',
  '\u0000',
  '\u{1F600}',
  '<',
  '"id":',
  'Patient/x',
  'mmol/L',
];
type Blow = { at: number; length: number; how: 'cut' | 'repeat' | 'flip' | 'put' | 'swap'; with: number };
const blows: fc.Arbitrary<Blow[]> = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 0.9999, noNaN: true }),
    length: fc.nat(60),
    how: fc.constantFrom('cut', 'repeat', 'flip', 'put', 'swap'),
    with: fc.nat(255),
  }),
  { minLength: 1, maxLength: 8 },
);

function damaged(whole: Uint8Array, all: Blow[]): Uint8Array {
  let now = Buffer.from(whole);
  for (const { at, length, how, with: n } of all) {
    const place = Math.floor(at * now.length);
    const [before, piece, after] = [
      now.subarray(0, place),
      now.subarray(place, place + length),
      now.subarray(place + length),
    ];
    if (how === 'cut') now = Buffer.concat([before, after]);
    else if (how === 'repeat') now = Buffer.concat([before, piece, piece, after]);
    else if (how === 'put') now = Buffer.concat([before, Buffer.from(BITS[n % BITS.length]!), piece, after]);
    else if (how === 'swap') now = Buffer.concat([after, piece, before]);
    else if (now.length > 0) {
      now = Buffer.from(now);
      now[place] = n;
    }
  }
  return new Uint8Array(now);
}

describe('damaged files', () => {
  it.each(Object.entries(kinds))(
    '%s',
    async (kind, seeds) => {
      const run = await fc.check(
        fc.asyncProperty(fc.constantFrom(...seeds), blows, fc.boolean(), async ([name, whole], all, unit) => {
          const input = { name, bytes: damaged(whole, all) };
          const settings = { today: TODAY, ...(unit ? { unit: 'mmol/L' as const } : {}) };
          const files = readInputs(await openWorkbooks([input]), settings);
          for (const file of files) sound(file);
          const { total } = buildTimeline(files, {});
          const { rows: came, used, notes, duplicate, setAside, ignored } = total;
          if (came !== used + notes + duplicate + setAside + ignored) throw new Error('rows lost');
        }),
        seconds > 0 ? { numRuns: 1e9, interruptAfterTimeLimit: seconds * 1000 } : { numRuns: 40 },
      );
      if (seconds > 0) console.log(`${kind}: ${run.numRuns} inputs`);
      if (run.counterexample !== null) throw new Error(fc.defaultReportMessage(run));
    },
    Math.max(60, seconds * 2 + 30) * 1000,
  );
});

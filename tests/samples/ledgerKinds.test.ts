import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Input } from '../../src/model/input.ts';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { number, stamp, text, workbookOf } from '../support/workbook.ts';
import { rowsAddUp } from './stories.ts';

// As ledger.test.ts, for every kind of input and for kinds beside each other: rows in any order, repeated, with faults
// among them and dealt over files are all accounted for, and change nothing of what is worked out.

/** Which of the readings, notes or faults it is. */
interface Row {
  is: 'reading' | 'note' | 'fault';
  i: number;
}
const READINGS = 40;
const NOTES = 4;
const START = Date.UTC(2026, 2, 2);
const OFFSET = '+02:00';
const bytes = (content: string): Uint8Array => new TextEncoder().encode(content);
const minuteOf = (row: Row): number => (row.is === 'reading' ? row.i * 5 : row.is === 'note' ? row.i * 60 + 2 : 0);
const clock = (row: Row): string => new Date(START + minuteOf(row) * 60_000).toISOString().slice(0, 19);
const when = (row: Row): string => clock(row) + OFFSET;
const value = (i: number): number => 100 + ((i * 37) % 90);
const grams = (i: number): number => 20 + i;

const csvRow = (row: Row): string => {
  const faults = [
    `2026-06-31 08:00${OFFSET},120,`,
    `2026-03-02 08:01${OFFSET},0,`,
    '12.3.x,120,',
    `2026-03-02 08:02${OFFSET},NA,`,
  ];
  if (row.is === 'fault') return faults[row.i]!;
  return row.is === 'reading' ? `${when(row)},${value(row.i)},` : `${when(row)},,${grams(row.i)}`;
};

const record = (row: Row): object => {
  const [time, glucose, carbs] = csvRow(row).split(',');
  return { time, 'sensor glucose (mg/dL)': glucose, 'carbs (g)': carbs };
};

const observation = (row: Row): object => {
  const code = row.is === 'note' ? '9059-7' : '99504-3';
  const quantity =
    row.is === 'note'
      ? { value: grams(row.i), code: 'g' }
      : { value: row.is === 'reading' ? value(row.i) : 1, code: 'mg/dL' };
  const whole = {
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code }] },
    subject: { reference: 'Patient/p' },
    effectiveDateTime: when(row),
    valueQuantity: { ...quantity, system: 'http://unitsofmeasure.org' },
  };
  if (row.is !== 'fault') return whole;
  const faults = [
    { status: 'entered-in-error' },
    { status: 'cancelled' },
    { effectiveDateTime: '2026-03-02' },
    { resourceType: '' },
  ];
  return { ...whole, ...faults[row.i]! };
};

const point = (row: Row): object => {
  const name = row.is === 'note' ? 'single-medication-dose-taken' : 'blood-glucose';
  const header = { schema_id: { namespace: 'omh', name, version: '1.0' } };
  const frame = { effective_time_frame: { date_time: when(row) } };
  if (row.is === 'note')
    return {
      header,
      body: { ...frame, medication: { generic_name: 'insulin' }, dose: { value: grams(row.i), unit: 'IU' } },
    };
  const body = {
    ...frame,
    specimen_source: 'interstitial fluid',
    blood_glucose: { value: row.is === 'reading' ? value(row.i) : -1, unit: 'mg/dL' },
  };
  if (row.is === 'reading') return { header, body };
  return [
    { header, body },
    { body },
    { header, body: { ...body, effective_time_frame: {} } },
    { header, body: { ...body, descriptive_statistic: 'average' } },
  ][row.i]!;
};

const lines = (rows: Row[], make: (row: Row) => object): Uint8Array =>
  bytes(rows.map((row) => JSON.stringify(make(row))).join('\n'));
const csv = (rows: Row[]): Uint8Array =>
  bytes(['Time,Sensor glucose (mg/dL),Carbs (g)', ...rows.map(csvRow)].join('\n'));
const serial = (row: Row): number => 46083 + minuteOf(row) / 1440;
const sheetRow = (row: Row) => {
  if (row.is === 'reading') return [stamp(serial(row)), number(value(row.i))];
  if (row.is === 'note') return [stamp(serial(row)), null, number(grams(row.i))];
  return [
    [text('12.3.x'), number(120)],
    [stamp(46083.3), number(0)],
    [stamp(46083.3), text('NA')],
    [stamp(80_000), number(120)],
  ][row.i]!;
};

const kinds: Record<string, (rows: Row[], f: number) => Input> = {
  delimited: (rows, f) => ({ name: `${f}.csv`, bytes: csv(rows) }),
  gzip: (rows, f) => ({ name: `${f}.csv.gz`, bytes: gzipSync(csv(rows)) }),
  zip: (rows, f) => ({ name: `${f}.zip`, bytes: zipSync({ 'in.csv': csv(rows) }) }),
  workbook: (rows, f) => ({
    name: `${f}.xlsx`,
    bytes: workbookOf({
      Log: Object.fromEntries(
        [[text('Time'), text('Sensor glucose (mg/dL)'), text('Carbs (g)')], ...rows.map(sheetRow)].map((cells, r) => [
          r + 1,
          cells,
        ]),
      ),
    }),
  }),
  'json-records': (rows, f) => ({ name: `${f}.json`, bytes: bytes(JSON.stringify(rows.map(record), null, 1)) }),
  'json lines': (rows, f) => ({ name: `${f}.jsonl`, bytes: lines(rows, record) }),
  'fhir, Bundle': (rows, f) => ({
    name: `${f}.json`,
    bytes: bytes(
      JSON.stringify({
        resourceType: 'Bundle',
        type: 'collection',
        entry: rows.map((row) => ({ resource: observation(row) })),
      }),
    ),
  }),
  'fhir, NDJSON': (rows, f) => ({ name: `${f}.ndjson`, bytes: lines([...rows], observation) }),
  'open-mhealth': (rows, f) => ({ name: `${f}.json`, bytes: lines(rows, point) }),
};

const all: Row[] = [
  ...Array.from({ length: READINGS }, (_, i): Row => ({ is: 'reading', i })),
  ...Array.from({ length: NOTES }, (_, i): Row => ({ is: 'note', i })),
];
const scene = fc
  .record({
    again: fc.subarray(all),
    faults: fc.array(fc.nat(3), { maxLength: 6 }),
    files: fc.integer({ min: 1, max: 3 }),
  })
  .chain(({ again, faults, files }) => {
    const rows: Row[] = [...all, ...again.map((row) => ({ ...row })), ...faults.map((i): Row => ({ is: 'fault', i }))];
    // Each file needs a row that tells what it is: the first of each is a good one.
    return fc.record({
      rows: fc.shuffledSubarray(rows, { minLength: rows.length, maxLength: rows.length }),
      files: fc.constant(files),
      again: fc.constant(again.length),
    });
  });

/** Deals the rows over so many files, a good row first in each: a file of faults alone tells nothing of its kind. */
function dealt(rows: Row[], files: number): Row[][] {
  const good = rows.filter(({ is }) => is === 'reading').slice(0, files);
  const rest = rows.filter((row) => !good.includes(row));
  return good.map((first, f) => [first, ...rest.filter((_, k) => k % files === f)]);
}

async function settle(inputs: Input[]) {
  const files = readInputs(await openWorkbooks(inputs), { today: '2026-07-01' });
  return { files, ...buildTimeline(files, {}) };
}

const numbers = ({ timeline }: Awaited<ReturnType<typeof settle>>) => ({
  at: [...timeline!.readings.at].map((at) => at - timeline!.readings.at[0]!),
  values: [...timeline!.readings.native],
  notes: timeline!.notes.map(({ at, kind, amount }) => [at - timeline!.readings.at[0]!, kind, amount]),
  days: timeline!.days.length,
});

describe('the ledger of every kind', () => {
  it.each(Object.entries(kinds))('%s', async (_, make) => {
    const plain = numbers(await settle([make(all, 0)]));
    expect([plain.values.length, plain.notes.length]).toEqual([READINGS, NOTES]);
    await fc.assert(
      fc.asyncProperty(scene, async ({ rows, files, again }) => {
        const parts = dealt(rows, files);
        const intake = await settle(parts.map(make));
        const { total, ledgers, setAside } = intake;
        const faults = rows.filter(({ is }) => is === 'fault').length;
        expect(rowsAddUp(total)).toBe(true);
        for (const { ledger } of ledgers) expect(rowsAddUp(ledger)).toBe(true);
        // A copy word for word is a repeat too where the copied row was a fault: FHIR sees it before it reads it.
        const repeats = total.duplicate - again;
        expect(total).toMatchObject({ used: READINGS, notes: NOTES, setAside: faults - repeats });
        expect(setAside.length).toBe(total.setAside);
        expect(setAside.every(({ line }) => line > 0)).toBe(true);
        expect(numbers(intake)).toEqual(plain);
      }),
      { numRuns: 12 },
    );
  });

  it('kinds beside each other', async () => {
    const together = Object.entries(kinds)
      // Cells of a workbook carry no offset, and data points no grams.
      .filter(([kind]) => kind !== 'workbook' && kind !== 'open-mhealth')
      .map(([, make]) => make);
    const plain = numbers(await settle([kinds.delimited!(all, 0)]));
    await fc.assert(
      fc.asyncProperty(
        scene,
        fc.array(fc.constantFrom(...together), { minLength: 3, maxLength: 3 }),
        async ({ rows, files }, makers) => {
          const intake = await settle(dealt(rows, files).map((part, f) => makers[f]!(part, f)));
          expect(rowsAddUp(intake.total)).toBe(true);
          expect(intake.total).toMatchObject({ used: READINGS, notes: NOTES });
          expect(numbers(intake)).toEqual(plain);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('a wide table: days in any order, given twice, over files', () => {
    const clocks = ['08:00', '08:05', '08:10', '08:15', '08:20', '08:25'];
    const days = Array.from(
      { length: 9 },
      (_, d) => `2026-03-${10 + d},${clocks.map((__, c) => value(d * 6 + c)).join(',')}`,
    );
    const file = (rows: string[], f: number) => ({
      name: `${f}.csv`,
      bytes: bytes([`Glucose (mg/dL),${clocks.join(',')}`, ...rows].join('\n')),
    });
    const read = (inputs: Input[]) => buildTimeline(readInputs(inputs, { today: '2026-07-01' }), {});
    const plain = read([file(days, 0)]);
    // A row here is a day of six readings.
    expect(plain.total.used).toBe(9);
    expect(plain.timeline!.readings.count).toBe(54);
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...days, ...days], { minLength: 18, maxLength: 18 }),
        fc.integer({ min: 1, max: 17 }),
        (rows, cut) => {
          const { timeline, total } = read([file(rows.slice(0, cut), 0), file(rows.slice(cut), 1)]);
          expect(rowsAddUp(total)).toBe(true);
          expect(total).toMatchObject({ used: 9, duplicate: 9 });
          expect([...timeline!.readings.native]).toEqual([...plain.timeline!.readings.native]);
        },
      ),
      { numRuns: 25 },
    );
  });
});

import { gzipSync } from 'node:zlib';
import { ownHash } from '../../src/cli/ownHash.ts';
import type { Input } from '../../src/model/input.ts';
import { openWorkbooks } from '../../src/readers/containers/workbook.ts';
import { readInputs } from '../../src/readers/index.ts';
import { number, stamp, text, workbookOf } from '../support/workbook.ts';
import { observation, point, value } from './records.ts';

/** Fourteen days, every three minutes. */
const ROWS = 6720;
const START = Date.UTC(2026, 0, 1);
const REPEATS = 15;
const iso = (i: number): string => new Date(START + i * 180_000).toISOString();
const all = <T>(make: (i: number) => T): T[] => Array.from({ length: ROWS }, (_, i) => make(i));

const delimited = (): string =>
  `Time,Sensor glucose (mg/dL)\n${all((i) => `${iso(i).slice(0, 16)},${value(i)}`).join('\n')}\n`;

/** 525,600 rows. */
function year(): string {
  const rows = ['Time,Sensor glucose (mg/dL)'];
  for (let i = 0; i < 525_600; i++)
    rows.push(`${new Date(Date.UTC(2025, 0, 1) + i * 60_000).toISOString().slice(0, 16)},${value(i)}`);
  return `${rows.join('\n')}\n`;
}

function wide(): string {
  const clocks = Array.from({ length: 480 }, (_, i) => new Date(START + i * 180_000).toISOString().slice(11, 16));
  const days = Array.from({ length: 14 }, (_, day) => {
    const cells = clocks.map((_, i) => value(day * 480 + i));
    return `${iso(day * 480).slice(0, 10)},${cells.join(',')}`;
  });
  return `Glucose (mg/dL),${clocks.join(',')}\n${days.join('\n')}\n`;
}

function workbook(): Uint8Array {
  const rows = Object.fromEntries(all((i) => [i + 2, [stamp(46023 + i / 480), number(value(i))]] as const));
  return workbookOf({ Log: { 1: [text('Time'), text('Sensor glucose (mg/dL)')], ...rows } });
}

const file = (name: string, content: string | Uint8Array): Input => ({
  name,
  bytes: typeof content === 'string' ? new TextEncoder().encode(content) : content,
});
const json = (content: unknown): Input => file('a.json', JSON.stringify(content, null, 1));

function bundle(): Input {
  const entry = all((i) => ({ resource: observation(i, iso(i)) }));
  return json({ resourceType: 'Bundle', type: 'collection', entry });
}

const kinds: [string, () => Input][] = [
  ['delimited', () => file('a.csv', delimited())],
  ['delimited, a year every minute', () => file('a.csv', year())],
  ['delimited, gzip', () => file('a.csv.gz', gzipSync(delimited()))],
  ['wide-table', () => file('a.csv', wide())],
  ['workbook', () => file('a.xlsx', workbook())],
  ['fhir, Bundle', bundle],
  ['fhir, NDJSON', () => file('a.ndjson', all((i) => JSON.stringify(observation(i, iso(i)))).join('\n'))],
  ['open-mhealth', () => json(all((i) => point(i, iso(i))))],
  ['json-records', () => json(all((i) => ({ time: iso(i), 'sensor glucose (mg/dL)': value(i) })))],
];

/** The least any reader of text must do: cut the same bytes into lines. */
function cutIntoLines(source: Uint8Array): number {
  let letters = 0;
  for (const line of Buffer.from(source.buffer, source.byteOffset, source.byteLength).toString('latin1').split('\n'))
    letters += line.length;
  return letters;
}

/** Milliseconds of processor time, which other work on the machine does not lengthen. */
async function median(work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < REPEATS; i++) {
    const start = process.cpuUsage();
    await work();
    const { user, system } = process.cpuUsage(start);
    times.push((user + system) / 1000);
  }
  return times.sort((a, b) => a - b)[REPEATS >> 1]!;
}

/** Rows a second (of processor time) of each kind, beside cutting the same bytes into lines. */
export async function readKinds(): Promise<Record<string, string | number>[]> {
  ownHash();
  const table: Record<string, string | number>[] = [];
  for (const [kind, make] of kinds) {
    const input = make();
    const read = await median(async () => readInputs(await openWorkbooks([input]), { today: '2026-06-01' }));
    const packed = input.bytes[0] === 0x50 || input.bytes[0] === 0x1f;
    const floor = await median(() => cutIntoLines(input.bytes));
    const [file] = readInputs(await openWorkbooks([input]), { today: '2026-06-01' });
    const { count } = file!.readings;
    if (count !== ROWS && count !== 525_600) throw new Error(`${kind}: ${count} readings`);
    table.push({
      kind,
      rows: count,
      'kB in': Math.round(input.bytes.length / 1000),
      'read ms': Math.round(read * 10) / 10,
      'rows/s': Math.round((count / read) * 1000),
      // Packed bytes have no lines.
      'lines only ms': packed ? '-' : Math.round(floor * 100) / 100,
      'times the floor': packed ? '-' : Math.round((read / floor) * 10) / 10,
    });
  }
  return table;
}

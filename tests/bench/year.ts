import { ownHash } from '../../src/cli/ownHash.ts';
import { readInputs } from '../../src/readers/index.ts';
import { observation, point, value } from './records.ts';

/**
 * A year of readings every minute (525,600) in one kind, in a process of its own: `tsx tests/bench/year.ts [kind]`. Prints the
 * time and the memory that reading takes beside the bytes of the file itself.
 */
const COUNT = 525_600;
const START = Date.UTC(2025, 0, 1);
const iso = (i: number): string => `${new Date(START + i * 60_000).toISOString().slice(0, 19)}+02:00`;

const kinds: Record<
  string,
  { name: string; before?: string; between: string; after?: string; make(i: number): string }
> = {
  'fhir-ndjson': { name: 'a.ndjson', between: '\n', make: (i) => JSON.stringify(observation(i, iso(i))) },
  'fhir-bundle': {
    name: 'a.json',
    before: '{"resourceType":"Bundle","type":"collection","entry":[\n',
    between: ',\n',
    after: '\n]}',
    make: (i) => `{"resource":${JSON.stringify(observation(i, iso(i)))}}`,
  },
  'open-mhealth': { name: 'a.ndjson', between: '\n', make: (i) => JSON.stringify(point(i, iso(i))) },
  'json-lines': {
    name: 'a.jsonl',
    between: '\n',
    make: (i) => JSON.stringify({ time: iso(i), 'sensor glucose (mg/dL)': value(i) }),
  },
  delimited: {
    name: 'a.csv',
    before: 'Time,Sensor glucose (mg/dL)\n',
    between: '\n',
    make: (i) => `${iso(i).slice(0, 16)},${value(i)}`,
  },
};

// As the door does.
ownHash();
const [, , kind = 'fhir-ndjson'] = process.argv;
const { name, before = '', between, after = '', make } = kinds[kind]!;
let bytes = Buffer.alloc((make(COUNT - 1).length + 8) * COUNT + 1000);
let length = bytes.write(before);
for (let i = 0; i < COUNT; i++) length += bytes.write(`${i > 0 ? between : ''}${make(i)}`, length);
length += bytes.write(after, length);
bytes = bytes.subarray(0, length);
const mb = (size: number): number => Math.round(size / 1e6);
const held = mb(process.resourceUsage().maxRSS * 1000);
const start = process.cpuUsage();
const [file] = readInputs([{ name, bytes }], { today: '2026-06-01' });
const { user, system } = process.cpuUsage(start);
console.log(
  JSON.stringify({
    kind,
    readings: file!.readings.count,
    'MB in': mb(length),
    's CPU': Math.round((user + system) / 1e4) / 100,
    'peak MB before': held,
    'peak MB': mb(process.resourceUsage().maxRSS * 1000),
  }),
);

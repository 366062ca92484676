import { readFileSync } from 'node:fs';
import { analyse } from '../../src/analyse.ts';
import { ownHash } from '../../src/cli/ownHash.ts';
import { compose } from '../../src/compose.ts';
import type { Settings } from '../../src/model/settings.ts';
import { readInputs } from '../../src/readers/index.ts';
import { writePdf } from '../../src/writers/pdf/index.ts';
import { makeInputs, workloads } from './workloads.ts';

/**
 * One workload, warm: medians over the second half of its repeats, as JSON on the standard output. Bundled by bench.ts and run from
 * the project's folder.
 */
ownHash();
const workload = workloads[Number(process.argv[2])]!;
const inputs = makeInputs(workload);
const bytesIn = inputs.reduce((sum, { bytes }) => sum + bytes.length, 0);
const rows = (workload.days * 1440) / workload.step + workload.days * 4;
const settings: Settings = { targets: 'adult', today: '2027-06-01', person: {}, period: { days: workload.days } };
const words = JSON.parse(readFileSync('templates/words/en.json', 'utf8'));
const [regular, semibold] = ['Regular', 'SemiBold'].map((weight) =>
  readFileSync(`dist/fonts/IBMPlexSans-${weight}.ttf`),
) as [Buffer, Buffer];

const times: Record<'read' | 'analyse' | 'compose' | 'write', number[]> = {
  read: [],
  analyse: [],
  compose: [],
  write: [],
};
async function timed<T>(part: keyof typeof times, work: () => T | Promise<T>): Promise<T> {
  const start = performance.now();
  const result = await work();
  times[part].push(performance.now() - start);
  return result;
}

let bytesOut = 0;
// The first part alone, then everything a report takes; reading is inside analysing too, and taken off below.
for (let i = 0; i < workload.repeats; i++) {
  await timed('read', () => readInputs(inputs, { today: settings.today }));
  const analysis = await timed('analyse', () => analyse(inputs, settings, 'bench'));
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  const papers = await timed('compose', () =>
    (['clinic', 'patient'] as const).map((voice) => compose(analysis, words, { voice, paper: 'a4' })),
  );
  bytesOut = 0;
  await timed('write', async () => {
    for (const paper of papers) bytesOut += (await writePdf(paper, { regular, semibold }, { version: 'bench' })).length;
  });
}

const median = (all: number[]): number => {
  const values = all.slice(all.length >> 1).sort((a, b) => a - b);
  return values[values.length >> 1]!;
};
const tenths = (value: number): number => Math.round(value * 10) / 10;
const read = median(times.read);
console.log(
  JSON.stringify({
    rows,
    'kB in': Math.round(bytesIn / 1000),
    'read ms': tenths(read),
    'rows/s read': Math.round((rows / read) * 1000),
    'read + analyse ms': tenths(median(times.analyse)),
    'compose both ms': tenths(median(times.compose)),
    'write both ms': tenths(median(times.write)),
    'kB out': Math.round(bytesOut / 1000),
  }),
);

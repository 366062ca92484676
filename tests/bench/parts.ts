import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { analyse } from '../../src/analyse.ts';
import { fingerprint } from '../../src/bytes/hash.ts';
import type { Deflate } from '../../src/bytes/pack.ts';
import { bytesOf } from '../../src/bytes/text.ts';
import { ownHash } from '../../src/cli/ownHash.ts';
import { factsOf } from '../../src/clinic/facts.ts';
import { compose } from '../../src/compose.ts';
import type { Settings } from '../../src/model/settings.ts';
import { visitOf } from '../../src/papers/visitOf.ts';
import { readInputs } from '../../src/readers/index.ts';
import { visitText } from '../../src/schemas/visitText.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { writePdf } from '../../src/writers/pdf/index.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { madePerson } from '../support/people.ts';

/**
 * Where a warm person's time in a clinic's folder goes: milliseconds of each part, over varied people, one after another in one
 * thread as a worker has them. The first third warms up. Bundled and run by bench.ts.
 */
ownHash();
const [people = 300, days = 14, step = 3] = process.argv.slice(2).map(Number);
const words = JSON.parse(readFileSync('templates/words/en.json', 'utf8'));
const [regular, semibold] = ['Regular', 'SemiBold'].map((weight) =>
  readFileSync(`dist/fonts/IBMPlexSans-${weight}.ttf`),
) as [Buffer, Buffer];
const fonts = { regular, semibold };
const deflate: Deflate = (bytes, level) => deflateSync(bytes, level === undefined ? {} : { level });
const out = mkdtempSync(join(tmpdir(), 'daybands-parts-'));

/** Milliseconds of processor time: beside other work the clock on the wall tells nothing. */
function cpuNow(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
const spent = new Map<string, number>();
async function timed<T>(part: string, work: () => T | Promise<T>): Promise<T> {
  const before = cpuNow();
  const result = await work();
  spent.set(part, (spent.get(part) ?? 0) + cpuNow() - before);
  return result;
}

async function turn(number: number): Promise<void> {
  const { code, readings, notes } = madePerson(number, { days, step });
  const inputs = [
    { name: 'sensor.csv', bytes: bytesOf(readings) },
    { name: 'logbook.csv', bytes: bytesOf(notes) },
  ];
  const settings: Settings = { targets: 'adult', today: '2027-06-01', person: { code } };
  await timed('read (again)', () => readInputs(inputs, { today: settings.today }));
  const analysis = await timed('read and analyse', () => analyse(inputs, settings, 'bench'));
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  await timed('facts', () => factsOf(analysis));
  const files: (Uint8Array | string)[] = [];
  for (const voice of ['clinic', 'patient'] as const) {
    const report = await timed(`compose ${voice}`, () => compose(analysis, words, { voice, paper: 'a4' }));
    files.push(await timed(`write ${voice}`, () => writePdf(report, fonts, { version: 'bench', deflate })));
  }
  files.push(
    await timed('draft', () =>
      pageAsText(compose(analysis, words, { voice: 'clinic', paper: 'a4', part: 'draft' }), 'interpretation'),
    ),
  );
  // On request in a folder run, so not saved below.
  await timed('analysis.json', () => analysisJson(analysis).join(''));
  files.push(await timed('visit file', () => visitText(visitOf(analysis, 'visit.json', null))));
  await timed('hash and save', () => {
    for (const [i, file] of files.entries()) {
      const bytes = typeof file === 'string' ? Buffer.from(file) : file;
      fingerprint(bytes);
      // A new file each: to empty one that stands costs more than to make one.
      writeFileSync(join(out, `${number}-${i}`), bytes);
    }
  });
}

const warm = Math.round(people / 3);
let start = cpuNow();
for (let i = 0; i < people; i++) {
  if (i === warm) {
    spent.clear();
    start = cpuNow();
  }
  await turn(i);
  await new Promise(setImmediate);
}
const all = cpuNow() - start;
rmSync(out, { recursive: true });
const each = (ms: number): number => Math.round((ms / (people - warm)) * 100) / 100;
console.table(Object.fromEntries([...spent].map(([part, ms]) => [part, { 'CPU ms a person': each(ms) }])));
console.log(`CPU ms a person: ${each(all)}`);

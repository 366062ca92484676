import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { bundleCore } from '../../src/build/core.ts';
import type { Analysis } from '../../src/index.ts';
import * as library from '../../src/index.ts';
import { plainExport } from '../cli/run.ts';
import { givenOf } from '../support/library.ts';
import { fonts, home, stories } from '../support/story.ts';
import { unpacked } from '../support/unpacked.ts';
import { number, stamp, text, workbookOf } from '../support/workbook.ts';
import { inBrowser } from './browser.ts';
import { inEngines } from './engines.ts';

const check = inBrowser();
const core = await bundleCore(home);
const HERE = 'http://core.test/';

/** What runs in the worker, behind the core: one person's numbers and clinic report, as base64 where they are bytes. */
const DRIVER = `
const bytesOf = (text) => Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
onmessage = async ({ data }) => {
  try {
    const inputs = data.inputs.map(({ name, bytes }) => ({ name, bytes: bytesOf(bytes) }));
    const analysis = daybands.analyse(await daybands.openWorkbooks(inputs), data.settings);
    if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
    const words = await daybands.words(data.language);
    const report = daybands.compose(analysis, words, { voice: 'clinic', paper: 'a4' });
    const faces = { regular: bytesOf(data.fonts.regular), semibold: bytesOf(data.fonts.semibold) };
    const pdf = await daybands.writePdf(report, faces);
    let packed = '';
    for (const byte of pdf) packed += String.fromCharCode(byte);
    postMessage({ json: daybands.analysisJson(analysis).join(''), pdf: btoa(packed) });
  } catch (error) {
    postMessage({ error: String(error && error.stack || error) });
  }
};`;

const SCRIPT = `URL.createObjectURL(new Blob([${JSON.stringify(core + DRIVER)}], { type: 'text/javascript' }))`;

/** Runs the task in a classic worker that is started from a Blob, as a page opened from a disk must. */
const IN_WORKER = `(script, task) => new Promise((done) => {
  const worker = new Worker(script);
  const end = (outcome) => {
    worker.terminate();
    done(outcome);
  };
  worker.onmessage = ({ data }) => end(data);
  worker.onerror = ({ message }) => end({ error: message });
  worker.postMessage(task);
})`;

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

let tab: Promise<Page> | undefined;

/** Far from home and in another language: nothing may notice where a browser stands. Each run has a worker of its own. */
async function newTab(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ timezoneId: 'Pacific/Auckland', locale: 'es-ES' });
  const page = await context.newPage();
  await page.route('**/*', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>core</title>' }),
  );
  await page.goto(HERE);
  await page.evaluate(`window.script = ${SCRIPT}`);
  return page;
}

/** Runs a task there, all in one tab that was given the script. */
async function runIn(browser: Browser): Promise<Run> {
  tab ??= newTab(browser);
  const page = await tab;
  return async (task) => (await page.evaluate(`(${IN_WORKER})(window.script, ${task})`)) as Outcome;
}

interface Outcome {
  json: string;
  pdf: string;
  error?: string;
}

type Given = Awaited<ReturnType<typeof givenOf>>;
/** Takes a task as JSON. */
type Run = (task: string) => Promise<Outcome>;

const compareStory = async (story: string, run: Run): Promise<void> =>
  compare(await givenOf(story), story === 'evening-exercise' ? 'es' : 'en', run);

/** Runs the core in a browser, by a function that runs a task there, and compares all that comes out with Node's. */
async function compare({ inputs, settings }: Given, language: library.Language, run: Run): Promise<void> {
  const faces = fonts();
  const task = {
    inputs: inputs.map(({ name, bytes }) => ({ name, bytes: base64(bytes) })),
    settings,
    language,
    fonts: { regular: base64(faces.regular), semibold: base64(faces.semibold) },
  };
  const outcome = await run(JSON.stringify(task));
  expect(outcome.error).toBe(undefined);

  const analysis = library.analyse(await library.openWorkbooks(inputs), settings) as Analysis;
  expect(outcome.json).toBe(library.analysisJson(analysis).join(''));
  const report = library.compose(analysis, await library.words(language), { voice: 'clinic', paper: 'a4' });
  const pdf = await library.writePdf(report, faces);
  expect(unpacked(Buffer.from(outcome.pdf, 'base64'))).toBe(unpacked(pdf));
}

const SAME = 'the core gives a browser the numbers it gives Node, to the byte, and the same paper';
for (const story of stories) {
  check(`${story}: ${SAME}`, async (browser) => {
    await compareStory(story, await runIn(browser));
  });
}

check('packed files and a workbook are opened there as here', async (browser) => {
  const table = plainExport();
  // Day numbers of a workbook count from 30 December 1899.
  const serial = (time: string): number => Date.parse(`${time.replace(' ', 'T')}Z`) / 86_400_000 + 25_569;
  const rows = table
    .trim()
    .split('\n')
    .slice(1)
    .map((line, i) => {
      const [time, value] = line.split(',') as [string, string];
      return [i + 2, [stamp(serial(time)), number(value)]] as const;
    });
  const book = workbookOf({ Readings: { 1: [text('Time'), text('Glucose (mg/dL)')], ...Object.fromEntries(rows) } });
  const settings: library.Settings = { targets: 'adult', today: '2026-04-01', person: {}, moreIndices: true };
  for (const input of [
    { name: 'readings.csv.gz', bytes: gzipSync(table) },
    { name: 'readings.zip', bytes: zipSync({ 'readings.csv': Buffer.from(table) }) },
    { name: 'readings.xlsx', bytes: book },
  ]) {
    await compare({ inputs: [input], settings }, 'en', await runIn(browser));
  }
});

/** Each with a page opened from the disk, as a person opens one. */
inEngines('the core', (further) => {
  for (const story of stories) {
    further(`${story}: ${SAME}`, async (engine) => {
      const folder = mkdtempSync(join(tmpdir(), 'daybands-page-'));
      writeFileSync(join(folder, 'core.html'), '<!doctype html><title>core</title>');
      await engine.goto(pathToFileURL(join(folder, 'core.html')).href);
      const run: Run = async (task) => (await engine.evaluate(`(${IN_WORKER})(${SCRIPT}, ${task})`)) as Outcome;
      await compareStory(story, run);
      rmSync(folder, { recursive: true });
    });
  }
});

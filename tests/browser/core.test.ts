import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { bundleCore } from '../../src/build/core.ts';
import type { Analysis } from '../../src/index.ts';
import * as library from '../../src/index.ts';
import { givenOf } from '../support/library.ts';
import { fonts, home, stories } from '../support/story.ts';
import { unpacked } from '../support/unpacked.ts';
import { inBrowser } from './browser.ts';

const check = inBrowser();
const core = await bundleCore(home);
const HERE = 'http://core.test/';

/** What runs in the worker, behind the core: one person's numbers and clinic report, as base64 where they are bytes. */
const DRIVER = `
const bytesOf = (text) => Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
onmessage = async ({ data }) => {
  try {
    const inputs = data.inputs.map(({ name, bytes }) => ({ name, bytes: bytesOf(bytes) }));
    const analysis = daybands.analyse(inputs, data.settings);
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

/** Runs the task in a classic worker that is started from a Blob, as a page opened from a disk must. */
const IN_WORKER = `({ script, task }) => new Promise((done) => {
  const worker = new Worker(URL.createObjectURL(new Blob([script], { type: 'text/javascript' })));
  worker.onmessage = ({ data }) => done(data);
  worker.onerror = ({ message }) => done({ error: message });
  worker.postMessage(task);
})`;

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

/** Far from home and in another language: nothing may notice where a browser stands. */
async function openedPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ timezoneId: 'Pacific/Auckland', locale: 'es-ES' });
  const page = await context.newPage();
  await page.route('**/*', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>core</title>' }),
  );
  await page.goto(HERE);
  return page;
}

for (const story of stories) {
  const language = story === 'evening-exercise' ? 'es' : 'en';
  check(
    `${story}: the core gives a browser the numbers it gives Node, to the byte, and the same paper`,
    async (browser) => {
      const { inputs, settings } = await givenOf(story);
      const page = await openedPage(browser);
      const faces = fonts();
      const task = {
        inputs: inputs.map(({ name, bytes }) => ({ name, bytes: base64(bytes) })),
        settings,
        language,
        fonts: { regular: base64(faces.regular), semibold: base64(faces.semibold) },
      };
      const given = JSON.stringify({ script: core + DRIVER, task });
      const made = (await page.evaluate(`(${IN_WORKER})(${given})`)) as { json: string; pdf: string; error?: string };
      await page.context().close();
      expect(made.error).toBe(undefined);

      const analysis = library.analyse(inputs, settings) as Analysis;
      expect(made.json).toBe(library.analysisJson(analysis).join(''));
      const report = library.compose(analysis, await library.words(language), { voice: 'clinic', paper: 'a4' });
      const pdf = await library.writePdf(report, faces);
      expect(unpacked(Buffer.from(made.pdf, 'base64'))).toBe(unpacked(pdf));
    },
  );
}

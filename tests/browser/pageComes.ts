import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { home } from '../support/story.ts';
import { bring, settled, until } from './pageOpened.ts';
import type { STATES } from './pageStates.ts';

export const hostile = (name: string): string => join(home, 'sample-data/hostile', name);

/** Keeps the worker from reading, as where a file takes its time. */
const HELD = `(() => {
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message, give) {
    if (message.job !== 'read') postMessage.call(this, message, give);
  };
})()`;
const reading = (page: Page): Promise<void> => until(page, `document.querySelector('#status button')`);
const example = async (page: Page): Promise<void> => {
  await page.locator('#bring .drop > .roads button').click();
  await settled(page);
};
const openGuide =
  (whose: 'patient' | 'clinic') =>
  async (page: Page): Promise<void> => {
    await page.click('[data-do=guide]');
    await page.click(`[data-guide=${whose}]`);
  };

/** How a person comes to each state; the list stands in docs/looks.md with what came of it. */
export const COMES: Record<(typeof STATES)[number], (page: Page) => Promise<void>> = {
  empty: async () => {},
  'guide for a person': openGuide('patient'),
  'guide for an educator': openGuide('clinic'),
  reading: async (page) => {
    await page.evaluate(HELD);
    await page.locator('#bring .drop > .roads button').click();
    await reading(page);
  },
  'reading a huge file': async (page) => {
    await page.evaluate(HELD);
    const buffer = Buffer.alloc(12_000_000, 'Time,Sensor glucose (mg/dL)\n');
    await page.setInputFiles(
      'input[type=file]',
      { name: 'year.csv', mimeType: 'text/csv', buffer },
      { timeout: 120_000 },
    );
    // The worker weighs it: what it will take comes after the word that it is being read.
    await until(page, `document.querySelector('#status p + p + button')`);
    if (!(await page.textContent('#status'))?.includes('12')) throw new Error('it does not say how large the file is');
  },
  asking: (page) => bring(page, [hostile('no-unit-could-be-either.csv')]),
  'asking for meanings': (page) => bring(page, [hostile('two-value-columns.csv')]),
  refused: (page) => bring(page, [hostile('two-people.csv')]),
  'nothing to read': (page) => bring(page, { 'letter.doc': 'x' }),
  'whose files': (page) => bring(page, { 'a.csv': 'x', 'b.csv': 'y' }),
  papers: example,
  visit: async (page) => {
    await page.check('input[value=visit]');
    await example(page);
    await page.fill('#visit [data-field=goal]', '…');
    await page.locator('#visit [data-field=goal]').blur();
    await settled(page);
  },
  'day opened large': async (page) => {
    await example(page);
    await page.frameLocator('iframe').locator('a.day').first().click();
    await until(page, `document.querySelector('dialog[open] iframe.paper:not(.coming)')`);
  },
  'something went wrong': async (page) => {
    // A file that was taken away after it was chosen.
    await page.evaluate(`Blob.prototype.arrayBuffer = () => Promise.reject(new Error('not found'))`);
    await page.setInputFiles('input[type=file]', hostile('two-people.csv'));
    await until(page, `document.querySelector('#status .grave')`);
  },
};

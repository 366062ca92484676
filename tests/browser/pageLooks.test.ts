import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { home } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { DESK, NARROWEST, overflow, PHONE } from './opened.ts';
import { bring, faintWords, faults, openAgain, openPage, settled, until } from './pageOpened.ts';
import { FOLDER_STATES, STATES } from './pageStates.ts';

const check = inBrowser();
const hostile = (name: string): string => join(home, 'sample-data/hostile', name);

/** Keeps the worker from reading, as where a file takes its time. */
const HELD = `(() => {
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message, give) {
    if (message.job !== 'read') postMessage.call(this, message, give);
  };
})()`;
const reading = (page: Page): Promise<void> => until(page, `document.querySelector('#status button')`);
const example = async (page: Page): Promise<void> => {
  await page.locator('.roads button').click();
  await settled(page);
};
const openGuide =
  (whose: 'patient' | 'clinic') =>
  async (page: Page): Promise<void> => {
    await page.click('[data-do=guide]');
    await page.click(`[data-guide=${whose}]`);
  };

/** How a person comes to each state; the list stands in docs/looks.md with what came of it. */
const COMES: Record<(typeof STATES)[number], (page: Page) => Promise<void>> = {
  empty: async () => {},
  'guide for a person': openGuide('patient'),
  'guide for an educator': openGuide('clinic'),
  reading: async (page) => {
    await page.evaluate(HELD);
    await page.locator('.roads button').click();
    await reading(page);
  },
  'reading a huge file': async (page) => {
    await page.evaluate(HELD);
    const buffer = Buffer.alloc(12_000_000, 'Time,Sensor glucose (mg/dL)\n');
    await page.setInputFiles('input[type=file]', { name: 'year.csv', mimeType: 'text/csv', buffer });
    // The worker weighs it: what it will take comes after the word that it is being read.
    await until(page, `document.querySelector('#status p + p + button')`);
    expect(await page.textContent('#status')).toContain('12');
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

for (const state of STATES) {
  for (const language of ['en', 'es']) {
    check(`${state}, ${language}: usable by all, at every width, in light and dark`, async (browser) => {
      const colorScheme = language === 'en' ? 'light' : 'dark';
      const { page, messages } = await openAgain(browser, {
        ...{ viewport: DESK, locale: language === 'en' ? 'en-US' : 'es-MX', colorScheme },
      });
      await COMES[state](page);
      await page.evaluate(`for (const part of document.querySelectorAll('details')) part.open = true`);
      expect(await faults(page)).toEqual([]);
      await page.emulateMedia({ colorScheme: colorScheme === 'light' ? 'dark' : 'light' });
      expect(await faintWords(page)).toEqual([]);
      await page.emulateMedia({ colorScheme });
      for (const viewport of [NARROWEST, PHONE, DESK]) {
        await page.setViewportSize(viewport);
        expect(await overflow({ page, messages }), `overflow at ${viewport.width}`).toBe(0);
      }
      // Nothing moves by itself, so that nobody needs to ask for less of it.
      expect(await page.evaluate('document.getAnimations().length')).toBe(0);
      expect(messages).toEqual([]);
    });
  }
}

test('the states that were looked through are those of docs/looks.md', () => {
  const rows = readFileSync(join(home, 'docs/looks.md'), 'utf8').matchAll(/^\| ([^|]+) \| none \|/gm);
  expect([...rows].map(([, name]) => name)).toEqual([...STATES, ...FOLDER_STATES]);
});

check('the keyboard alone leads from the files to a saved paper', async (browser) => {
  const { page } = await openPage(browser);
  // Listened for from the start: the engine has to be asked to hand its chooser over, which takes a moment.
  const chooser = page.waitForEvent('filechooser');
  const press = async (key: string, times = 1): Promise<void> => {
    for (let i = 0; i < times; i++) await page.keyboard.press(key);
  };
  const focused = (): Promise<string> =>
    page.evaluate(
      `((at) => (at.closest('label')?.textContent ?? at.textContent ?? '').trim())(document.activeElement)`,
    );
  const tabTo = async (text: string): Promise<void> => {
    for (let i = 0; i < 60; i++) {
      await press('Tab');
      if ((await focused()).startsWith(text)) return;
    }
    throw new Error(`Tab never came to ${text}, last ${await focused()}`);
  };
  await press('Tab');
  expect(await focused()).toBe('Skip to the papers');
  await tabTo('My own days');
  await press('ArrowDown');
  await tabTo('Choose files');
  await press('Enter');
  await (await chooser).setFiles(hostile('no-unit-could-be-either.csv'));
  await settled(page);
  // The heading of what is new has the focus, so that it is read out and Tab goes on from there.
  expect(await focused()).toMatch(/^Before the papers/);
  await tabTo('mg/dL');
  await press('ArrowDown');
  await tabTo('Read again');
  await press('Enter');
  // The unit alone does not do for readings that look like nobody's.
  await until(page, `document.querySelector('#asked [data-field=series]')`);
  await tabTo('I have looked');
  await press('Space');
  await tabTo('Read again');
  await press('Enter');
  await until(page, `document.querySelector('iframe.paper:not(.coming)')`);
  expect(await focused()).toBe('The papers');
  await tabTo('Report for the care team');
  await press('ArrowRight');
  expect(await focused()).toBe('Sheet for the person');
  await settled(page);
  await tabTo('Save');
  const [download] = await Promise.all([page.waitForEvent('download'), press('Enter')]);
  // The sheets that are ticked, as one archive.
  expect(download.suggestedFilename()).toMatch(/\.zip$/);
  await page.context().close();
});

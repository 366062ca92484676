import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { home } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { DESK, NARROWEST, overflow, PHONE } from './opened.ts';
import { bring, faults, openAgain, openPage, settled, until } from './pageOpened.ts';

const check = inBrowser();
const hostile = (name: string): string => join(home, 'sample-data/hostile', name);

/** Each state of the page, and how a person comes to it. */
const STATES: [state: string, files: string[] | Record<string, string> | 'none' | 'example' | 'fault'][] = [
  ['empty', 'none'],
  ['asking', [hostile('no-unit-could-be-either.csv')]],
  ['asking for meanings', [hostile('two-value-columns.csv')]],
  ['refused', [hostile('two-people.csv')]],
  ['nothing to read', { 'letter.doc': 'x' }],
  ['whose files', { 'a.csv': 'x', 'b.csv': 'y' }],
  ['papers', 'example'],
  ['failed', 'fault'],
];

/** A file that was taken away after it was chosen. */
async function bringGone(page: Page): Promise<void> {
  await page.evaluate(`Blob.prototype.arrayBuffer = () => Promise.reject(new Error('not found'))`);
  await page.setInputFiles('input[type=file]', hostile('two-people.csv'));
  await until(page, `document.querySelector('#status .grave')`);
}

for (const [state, files] of STATES) {
  for (const language of ['en', 'es']) {
    check(`${state}, ${language}: usable by all, at every width`, async (browser) => {
      const { page, messages } = await openAgain(browser, {
        ...{ viewport: DESK, locale: language === 'en' ? 'en-US' : 'es-MX' },
        colorScheme: language === 'en' ? 'light' : 'dark',
      });
      if (files === 'fault') await bringGone(page);
      else if (files === 'example') await page.locator('.roads button').click();
      else if (files !== 'none') await bring(page, files);
      if (files === 'example') await settled(page);
      expect(await page.locator('#status .grave').count()).toBe(files === 'fault' ? 1 : 0);
      await page.evaluate(`for (const part of document.querySelectorAll('details')) part.open = true`);
      expect(await faults(page)).toEqual([]);
      for (const viewport of [NARROWEST, PHONE, DESK]) {
        await page.setViewportSize(viewport);
        expect(await overflow({ page, messages }), `overflow at ${viewport.width}`).toBe(0);
      }
      expect(messages).toEqual([]);
    });
  }
}

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

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { home } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { DESK, NARROWEST, overflow, PHONE } from './opened.ts';
import { COMES, hostile } from './pageComes.ts';
import { faintWords, faults, openAgain, openPage, settled, until } from './pageOpened.ts';
import { FOLDER_STATES, STATES } from './pageStates.ts';

const check = inBrowser();
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

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { home, stories } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { bring, bringFolder, openAgain, openPage, savedAll, savedBy, settled, until } from './pageOpened.ts';
import { expectSame, writtenByCommand } from './sameFiles.ts';

const check = inBrowser();

/** Files beside each other one by one; where earlier visits lie in a folder of their own, the whole folder. */
function bringStory(page: Page, story: string): Promise<void> {
  const folder = join(home, 'sample-data', story);
  const inside = readdirSync(folder, { withFileTypes: true });
  if (inside.some((entry) => entry.isDirectory())) return bringFolder(page, folder);
  return bring(
    page,
    inside.map(({ name }) => join(folder, name)),
  );
}

const compare = async (page: Page, story: string, language: string): Promise<void> =>
  expectSame(await savedAll(page), writtenByCommand(join(home, 'sample-data', story), '--language', language));

// Far from home and in another language: nothing may notice where a browser stands.
for (const [i, story] of stories.entries()) {
  const language = i % 2 === 0 ? 'en' : 'es';
  check(`${story}: the page saves what the command writes, far away, in ${language}`, async (browser) => {
    const { page, messages } = await openAgain(browser, {
      ...{ timezoneId: 'Pacific/Auckland', locale: language === 'en' ? 'en-NZ' : 'es-ES' },
    });
    await page.check('input[value=visit]');
    await bringStory(page, story);
    await compare(page, story, language);
    expect(messages).toEqual([]);
  });
}

check('a fortnight to try is marked as invented, on the screen and on paper', async (browser) => {
  const { page, messages } = await openAgain(browser);
  await page.click('text=Try it with invented days');
  await settled(page);
  // Once on the screen, and on each side of the papers.
  expect(await page.locator('.taken .grave').textContent()).toMatch(/invented/);
  expect(
    await page
      .getByText(/days are invented/i)
      .filter({ visible: true })
      .count(),
  ).toBe(1);
  expect(await page.frameLocator('iframe').locator('header').textContent()).toMatch(/EXAMPLE.*invented days/s);
  const { name, bytes } = await savedBy(page, 'analysis');
  expect(name).toBe('EXAMPLE-analysis.json');
  expect(JSON.parse(Buffer.from(bytes).toString('utf8')).settings.person.clinic).toBe('invented days');
  expect(messages).toEqual([]);
});

check('nothing is kept: no storage holds anything once the papers are made', async (browser) => {
  const { page } = await openPage(browser);
  await page.click('text=Try it with invented days');
  await settled(page);
  const kept = await page.evaluate(`(async () => [
    localStorage.length, sessionStorage.length, document.cookie, (await indexedDB.databases()).length,
  ])()`);
  expect(kept).toEqual([0, 0, '', 0]);
  await page.context().close();
});

check('a choice shows at once, the old paper stands until then, and the focus stays', async (browser) => {
  const { page } = await openAgain(browser);
  await page.click('text=Try it with invented days');
  await settled(page);
  const days = page.getByLabel('Days to look at');
  await days.focus();
  await days.selectOption('7');
  await until(page, `document.querySelector('#told').textContent.includes('7 days')`);
  await settled(page);
  expect(await page.locator('iframe').count()).toBe(1);
  expect(await page.frameLocator('iframe').locator('main').textContent()).toMatch(/7 days/);
  expect(await page.evaluate('document.activeElement.tagName')).toBe('SELECT');
  await page.getByLabel('Language').selectOption('es-MX');
  await settled(page);
  expect(await page.frameLocator('iframe').locator('html').getAttribute('lang')).toBe('es');
  expect(await page.locator('html').getAttribute('lang')).toBe('es');
});

check('a day of a paper is read hour by hour with the keys', async (browser) => {
  const { page, messages } = await openAgain(browser);
  await page.click('text=Try it with invented days');
  await settled(page);
  await page.getByRole('tab', { name: 'Further pages' }).click();
  await until(
    page,
    `document.querySelectorAll('iframe').length === 1 && document.querySelector('iframe[title="Further pages"]')`,
  );
  const strip = page.frameLocator('iframe').locator('.strip').nth(1);
  await strip.locator('input[type=range]').focus();
  for (let i = 0; i < 7; i++) await page.keyboard.press('ArrowRight');
  const seventh = await strip.locator('tbody tr').nth(7).locator('th,td').allTextContents();
  const readout = await strip.locator('.readout').textContent();
  for (const cell of seventh) expect(readout).toContain(cell);
  expect(await strip.locator('input[type=range]').getAttribute('aria-valuetext')).toBe(readout);
  expect(messages).toEqual([]);
});

check('the button for folders, pressed, takes a folder with all that lies in it', async (browser) => {
  const { page, messages } = await openAgain(browser);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.click('text=Choose a folder')]);
  await chooser.setFiles(join(home, 'sample-data/four-visits'));
  await settled(page);
  expect(await page.locator('.taken').textContent()).toContain('four-visits');
  expect(await page.locator('iframe').count()).toBe(1);
  expect(messages).toEqual([]);
});

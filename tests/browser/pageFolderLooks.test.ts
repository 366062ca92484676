import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { writePeople } from '../support/people.ts';
import { inBrowser } from './browser.ts';
import { DESK, NARROWEST, overflow, PHONE } from './opened.ts';
import { chooseFolder, openFolderPage, rested } from './pageFolderOpened.ts';
import { faintWords, faults, settled, until } from './pageOpened.ts';
import { FOLDER_STATES } from './pageStates.ts';

const check = inBrowser();
const scratch = mkdtempSync(join(tmpdir(), 'daybands-looks-'));
afterAll(() => rmSync(scratch, { recursive: true }));

writePeople(scratch, 6, { days: 2, step: 30 });
writeFileSync(join(scratch, 'broken.csv'), 'no table');
writeFileSync(join(scratch, 'manifest.csv'), 'person,visit\nP-0001,2026-03-04 09:30\n');

const lines = (n: number): string => `document.querySelectorAll('.worklist tbody tr').length === ${n}`;
const press = (page: Page, place: string): Promise<void> =>
  page.evaluate(`document.querySelector(${JSON.stringify(place)}).click()`);

for (const language of ['en', 'es'])
  check(
    `a folder found, running, stopped, done and someone opened, ${language}: usable by all, at every width`,
    async (browser) => {
      const scheme = language === 'en' ? 'light' : 'dark';
      const { page, messages } = await openFolderPage(browser, {
        ...{ viewport: DESK, locale: language === 'en' ? 'en-US' : 'es-MX' },
        colorScheme: scheme,
      });
      const seen: string[] = [];
      const usable = async (state: (typeof FOLDER_STATES)[number]): Promise<void> => {
        seen.push(state);
        await page.evaluate(`for (const part of document.querySelectorAll('main details')) part.open = true`);
        expect(await faults(page), state).toEqual([]);
        await page.emulateMedia({ colorScheme: scheme === 'light' ? 'dark' : 'light' });
        expect(await faintWords(page), state).toEqual([]);
        await page.emulateMedia({ colorScheme: scheme });
        for (const viewport of [NARROWEST, PHONE, DESK]) {
          await page.setViewportSize(viewport);
          expect(await overflow({ page, messages }), `${state}, overflow at ${viewport.width}`).toBe(0);
        }
      };
      await chooseFolder(page, scratch);
      await usable('folder found');
      await page.evaluate(`window.held = ['P-0004']`);
      await press(page, '[data-do=begin]');
      await until(page, lines(4));
      await usable('folder being read');
      await press(page, '.progress button');
      await rested(page);
      await usable('folder stopped');
      await page.evaluate('window.held = []');
      await press(page, '.progress button');
      await rested(page);
      await until(page, `!document.querySelector('.progress button')`);
      await usable('folder done');
      // No word of the other language stands on it.
      if (language === 'es')
        expect(await page.locator('#who').textContent()).not.toMatch(/\b(readings|hours|Why|People)\b/);
      for (const [tab, state] of [
        ['screen', 'worklist to sort and find'],
        ['paper', 'worklist by group'],
      ] as const) {
        await page.evaluate(`document.querySelector('#tab-${tab}').click()`);
        await until(page, `document.querySelectorAll('.framed iframe.paper:not(.coming)').length === 1`);
        await usable(state);
      }
      await page.evaluate(`document.querySelector('#tab-list').click()`);
      await press(page, '.worklist tbody tr:last-child button');
      await settled(page);
      await usable('someone of a folder opened');
      expect(seen).toEqual(FOLDER_STATES);
      expect(messages).toEqual([]);
      await page.context().close();
    },
  );

check('the keyboard alone leads from a folder to anyone and back, and to everything saved', async (browser) => {
  const { page } = await openFolderPage(browser);
  const focused = (): Promise<string> => page.evaluate(`document.activeElement.textContent.trim()`);
  const tabTo = async (text: string): Promise<void> => {
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      if ((await focused()).startsWith(text)) return;
    }
    throw new Error(`Tab never came to ${text}, last ${await focused()}`);
  };
  await chooseFolder(page, scratch);
  expect(await focused()).toBe('7 people');
  await page.evaluate(`window.held = ['P-0002', 'P-0006']`);
  await tabTo('Read everyone');
  await page.keyboard.press('Enter');
  await until(page, lines(2));
  await tabTo('P-0001');
  // Others come between, and the focus stays where it was.
  await page.evaluate(`window.waiting.pop()()`);
  await until(page, lines(6));
  expect(await focused()).toBe('P-0001');
  await page.keyboard.press('Enter');
  await settled(page);
  expect(await focused()).toBe('The papers of P-0001');
  await tabTo('Back to all people');
  await page.keyboard.press('Enter');
  await tabTo('Pause');
  await page.keyboard.press('Enter');
  await rested(page);
  await tabTo('Save everything as one zip');
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toMatch(/-papers\.zip$/);
  await page.context().close();
});

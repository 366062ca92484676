import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { composeDay } from '../../src/compose.ts';
import { analyseStory, held } from '../samples/stories.ts';
import { wordsOf } from '../support/story.ts';
import { ownTemplate, webPage } from '../support/webPage.ts';
import { inBrowser } from './browser.ts';
import { DESK, NARROWEST, opened, overflow, PHONE, violations } from './opened.ts';
import { openAgain, settled, until } from './pageOpened.ts';

const check = inBrowser();

/** Until a day is shown, whole. */
const large = (page: Page, name: string): Promise<void> =>
  until(
    page,
    `document.querySelector('#day-name')?.textContent === ${JSON.stringify(name)} &&
      document.querySelectorAll('dialog[open] iframe').length === 1 && !document.querySelector('dialog .coming')`,
  );
const paper = (page: Page) => page.frameLocator('#paper iframe');
const day = (page: Page) => page.frameLocator('dialog iframe');
const focus = (page: Page): Promise<string> =>
  page.evaluate(`((at) => (at.contentDocument?.activeElement ?? at).dataset.day ?? at.id)(document.activeElement)`);

check('a date in a paper leads to its day, large; the focus comes back to it', async (browser) => {
  const { page, messages } = await openAgain(browser, { locale: 'es-MX', colorScheme: 'dark', viewport: DESK });
  await page.check('input[value=visit]');
  await page.locator('.roads button').first().click();
  await settled(page);
  const link = paper(page).locator('main p a.day, main li a.day').first();
  const date = (await link.getAttribute('data-day'))!;
  const nameOf = (offset: number): string =>
    composeDay(held(analyseStory('steady-fortnight')), wordsOf('es'), dateAt(date, offset), {
      ...{ voice: 'clinic', paper: 'a4' },
    })!.report.pages[0]!.title;
  await link.focus();
  await page.keyboard.press('Enter');
  await large(page, nameOf(0));
  expect(await focus(page)).toBe('day-name');

  // Read off by keys: what is seen is what a reader by ear hears.
  const slider = day(page).locator('input[type=range]:visible');
  await slider.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  expect(await slider.getAttribute('aria-valuetext')).toMatch(/^11:50\sp\.m\. · /);
  expect(await day(page).locator('.readout').first().textContent()).toBe(await slider.getAttribute('aria-valuetext'));
  // And by touch or pointer, at the place that is pointed at.
  const box = (await slider.boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.5001, box.y + 20);
  expect(await slider.getAttribute('aria-valuetext')).toMatch(/^mediodía · /);

  // From day to day; whoever goes on stays on the button.
  await page.locator('[data-go=after]').focus();
  await page.keyboard.press('Enter');
  await large(page, nameOf(1));
  expect(await page.evaluate('document.activeElement.dataset.go')).toBe('after');

  // Escape closes it from within the day as well, and the paper is where it was.
  await day(page).locator('input[type=range]:visible').focus();
  await page.keyboard.press('Escape');
  await until(page, `!document.querySelector('dialog[open]')`);
  // Engines tell a little later that it was closed.
  await expect.poll(() => focus(page)).toBe(date);
  expect(await page.locator('dialog iframe').count()).toBe(0);

  // A row of the lows and a picture of a day lead there too.
  await paper(page).locator('button.day').first().click();
  await until(page, `document.querySelector('dialog[open] iframe.paper:not(.coming)')`);
  await page.locator('[data-go=close]').click();
  expect(await page.locator('dialog[open]').count()).toBe(0);
  // A pointer over any frame without scripts makes this engine say that none runs there: also over plain text.
  expect(messages.filter((line) => !/^Blocked script execution in 'about:srcdoc'/.test(line))).toEqual([]);
});

/** A day so many days after another. */
const dateAt = (date: string, days: number) =>
  new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10) as never;

check('a day by itself can be read by all', async (browser) => {
  const template = await ownTemplate();
  const analysis = held(analyseStory('evening-exercise'));
  const { date } = analysis.timeline.days[1]!;
  for (const voice of ['clinic', 'patient'] as const) {
    const { report } = composeDay(analysis, wordsOf(), date, { voice, paper: 'a4' })!;
    const it = await opened(browser, webPage(report, template), PHONE);
    expect(await violations(it)).toEqual([]);
    for (const viewport of [NARROWEST, DESK]) {
      await it.page.setViewportSize(viewport);
      expect(await overflow(it), `${voice}: overflow at ${viewport.width}`).toBe(0);
    }
  }
});

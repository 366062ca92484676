import { expect } from 'vitest';
import { inBrowser } from './browser.ts';
import { openFolderPage } from './pageFolderOpened.ts';
import { savedBy, settled, until } from './pageOpened.ts';

const check = inBrowser();

check('words that were typed outlive every worker, and the next one puts them on the paper', async (browser) => {
  const { page, messages } = await openFolderPage(browser);
  await page.check('input[value=visit]');
  await page.click('text=Try it with invented days');
  await settled(page);
  const goal = page.locator('#visit [data-field=goal]');
  await goal.fill('a goal that stays');
  await page.locator('#visit [data-field=by]').fill('Dr B');
  // It ends while the paper is shown again, and once more while it is saved.
  for (const job of ['show', 'make']) {
    await page.evaluate(`window.crash = ['${job}']`);
    if (job === 'show') await page.locator('#visit [data-field=by]').blur();
    else await page.click('[data-save=visit]');
    await until(page, `document.querySelector('#status .grave')`);
    expect(await page.textContent('#status .grave')).toMatch(/out of memory.*What you chose is kept/s);
    await page.evaluate('window.crash = []');
    await page.click('text=Try again');
    await settled(page);
    await until(
      page,
      `document.querySelector('iframe').contentDocument.body.textContent.includes('a goal that stays')`,
    );
    expect(await goal.inputValue()).toBe('a goal that stays');
  }
  const { bytes } = await savedBy(page, 'visit');
  expect(JSON.parse(Buffer.from(bytes).toString('utf8')).agreed).toMatchObject({
    goal: 'a goal that stays',
    by: 'Dr B',
  });
  expect(messages).toEqual([]);
  await page.context().close();
});

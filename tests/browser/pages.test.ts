import { expect, test } from 'vitest';
import { inBrowser } from './browser.ts';
import { BUSIEST, DESK, furtherPage, type Opened, opened, overflow, PHONE, violations, webPapers } from './opened.ts';

const check = inBrowser();
const [, patient] = webPapers(BUSIEST, 'en').map(({ html }) => html) as [string, string];
/** The page with the most to it: days that can be hidden and read hour by hour. */
const clinic = furtherPage(BUSIEST);

test('there are stories to look at', () => {
  expect(clinic).toBeDefined();
  expect(patient).toBeDefined();
});

check('the look finds faults that were planted', async (browser) => {
  const planted = patient.replace('<h2', '<h4').replace('<html lang="en"', '<html');
  const it = await opened(browser, planted, PHONE);
  const found = (await violations(it)).map((line) => line.split(':')[0]);
  expect(found).toEqual(expect.arrayContaining(['html-has-lang', 'heading-order']));
});

check('the policy holds even if markup had got in', async (browser) => {
  const breach = '<img src="http://elsewhere.test/a.png"><script>window.ran = true</script><p style="color:red">x</p>';
  const { page, messages } = await opened(browser, clinic.replace('</main>', `${breach}</main>`), DESK);
  expect(await page.evaluate('window.ran')).toBeUndefined();
  expect(messages.filter((line) => line.startsWith('http'))).toEqual([]);
  expect(messages.filter((line) => line.includes('Content Security Policy'))).toHaveLength(3);
});

check('with every part opened it is still free of faults', async (browser) => {
  const it = await opened(browser, clinic, PHONE);
  await it.page.evaluate('for (const part of document.querySelectorAll("details")) part.open = true');
  expect(await overflow(it)).toBe(0);
  expect(await violations(it)).toEqual([]);
});

check('where writing runs from right to left, time still runs from left to right', async (browser) => {
  const it = await opened(browser, clinic.replace('dir="ltr"', 'dir="rtl"'), PHONE);
  expect(await overflow(it)).toBe(0);
  expect(await violations(it)).toEqual([]);
  const direction = (what: string) => it.page.evaluate(`getComputedStyle(document.querySelector('${what}')).direction`);
  expect(await direction('main')).toBe('rtl');
  for (const what of ['.strip svg', '.strip input', 'figure > .scroll:has(svg)'])
    expect(await direction(what)).toBe('ltr');
});

check('a day is read hour by hour with the keys, and with the pointer', async (browser) => {
  const { page, messages } = await opened(browser, clinic, DESK);
  const strip = page.locator('.strip').nth(1);
  const pointer = strip.locator('input[type=range]');
  await pointer.focus();
  for (let i = 0; i < 7; i++) await page.keyboard.press('ArrowRight');
  const seventh = await strip.locator('tbody tr').nth(7).locator('th,td').allTextContents();
  const readout = await strip.locator('.readout').textContent();
  for (const cell of seventh) expect(readout).toContain(cell);
  expect(await pointer.getAttribute('aria-valuetext')).toBe(readout);
  const box = (await pointer.boundingBox())!;
  await page.mouse.move(box.x + (box.width * 20.5) / 24, box.y + 10);
  expect(await strip.locator('.readout').textContent()).toContain(
    (await strip.locator('tbody th').nth(20).textContent())!,
  );
  expect(messages).toEqual([]);
});

check('days can be hidden, never in silence, and shown again', async (browser) => {
  const { page } = await opened(browser, clinic, DESK);
  const shown = page.locator('.strip:visible');
  const every = await shown.count();
  await page.locator('.chooser summary').click();
  await page.locator('.chooser input').nth(3).uncheck();
  await page.locator('.chooser input').nth(0).uncheck();
  expect(await shown.count()).toBe(every - 2);
  expect(await page.locator('.shown').textContent()).toContain(`${every - 2} of ${every} days`);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.shown').isVisible(), 'on paper too').toBe(true);
  expect(await shown.count()).toBe(every - 2);
  await page.emulateMedia({ media: 'screen' });
  await page.locator('button[data-set=all]').click();
  expect(await shown.count()).toBe(every);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.shown').isVisible()).toBe(false);
});

check('without its script everything is there to be read', async (browser) => {
  const withScript = await opened(browser, clinic, DESK);
  const without = await opened(browser, clinic, DESK, false);
  const texts = 'p:not(.readout, .shown), li:not(.days li), th, td, svg text';
  const read = ({ page }: Opened) => page.locator('main').locator(texts).allTextContents();
  expect(await read(without)).toEqual(await read(withScript));
  expect(await without.page.locator('.strip:visible').count()).toBe(await withScript.page.locator('.strip').count());
  expect(await without.page.locator('.chooser:visible').count()).toBe(0);
});

check('the skip link comes first and leads past the contents', async (browser) => {
  const { page } = await opened(browser, clinic, DESK);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await page.evaluate('document.activeElement.id')).toBe('report');
});

check('text is large enough: 10.5 points for a clinic, 14 for a patient', async (browser) => {
  const smallest = async (html: string): Promise<number> => {
    const { page } = await opened(browser, html, PHONE);
    return page.evaluate(
      `Math.min(...[...document.querySelectorAll('main :is(p, li, th, td, summary, label, figcaption, h1, h2, h3, h4)')]
        .map((element) => parseFloat(getComputedStyle(element).fontSize) * 0.75))`,
    );
  };
  expect(await smallest(clinic)).toBeGreaterThanOrEqual(10.5);
  expect(await smallest(patient)).toBeGreaterThanOrEqual(14);
});

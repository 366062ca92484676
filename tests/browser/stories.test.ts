import { readdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { analyseStory, sampleData } from '../samples/stories.ts';
import { wordsOf } from '../support/story.ts';
import { ownTemplate, webPage } from '../support/webPage.ts';
import { inBrowser } from './browser.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const check = inBrowser();
const template = await ownTemplate();

/** WCAG 2.2 AA (W3C Recommendation, 2023) as far as a program can tell, and what axe-core calls good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const HERE = 'http://report.test/';
const PHONE = { width: 360, height: 740 };
/** Where WCAG 2.2 (1.4.10, Reflow) wants no scrolling in two directions. */
const NARROWEST = { width: 320, height: 640 };
const DESK = { width: 1280, height: 900 };

interface Opened {
  page: Page;
  /** Addresses asked for, and what the browser complained of, such as a breach of the policy. */
  told: string[];
}

/** A page opened under an address that exists nowhere else, watched for whatever it asks for. */
async function opened(browser: Browser, html: string, viewport: typeof PHONE, script = true): Promise<Opened> {
  const context = await browser.newContext({ viewport, javaScriptEnabled: script });
  const page = await context.newPage();
  const told: string[] = [];
  await page.route('**/*', (route) => {
    if (route.request().url() === HERE) return route.fulfill({ contentType: 'text/html', body: html });
    told.push(route.request().url());
    return route.abort();
  });
  page.on('console', (message) => told.push(message.text()));
  page.on('pageerror', (error) => told.push(error.message));
  await page.goto(HERE);
  return { page, told };
}

async function violations({ page }: Opened): Promise<string[]> {
  await page.evaluate(axe);
  const results = (await page.evaluate(`axe.run(document, { runOnly: ${JSON.stringify(TAGS)} })`)) as AxeResults;
  return results.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
}

/** Wider than the window, measured on the page itself. */
const overflow = ({ page }: Opened): Promise<number> =>
  page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');

const stories = readdirSync(sampleData).filter(
  (name) =>
    statSync(join(sampleData, name)).isDirectory() && readdirSync(join(sampleData, name)).includes('settings.json'),
);

/** Busiest of them: both sizes of window are looked through for it, the small one for all. */
const BUSIEST = 'evening-exercise';
const papers = new Map<string, string>();

for (const story of stories) {
  const analysis = analyseStory(story);
  if (!analysis.ok) continue;
  for (const language of ['en', 'es'])
    for (const voice of ['clinic', 'patient'] as const) {
      const html = webPage(compose(analysis, wordsOf(language), { voice, paper: 'a4' }), template);
      const name = language === 'en' ? `${story} ${voice}` : `${story} ${language} ${voice}`;
      papers.set(name, html);
      check(`${name}: fits, can be read by all and keeps to itself`, async (browser) => {
        for (const viewport of [NARROWEST, PHONE, DESK]) {
          const it = await opened(browser, html, viewport);
          expect(await overflow(it), `overflow at ${viewport.width}`).toBe(0);
          if (viewport === PHONE || (viewport === DESK && story === BUSIEST)) expect(await violations(it)).toEqual([]);
          expect(it.told).toEqual([]);
          await it.page.context().close();
        }
      });
    }
}

const clinic = papers.get(`${BUSIEST} clinic`)!;
const patient = papers.get(`${BUSIEST} patient`)!;

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
  const { page, told } = await opened(browser, clinic.replace('</main>', `${breach}</main>`), DESK);
  expect(await page.evaluate('window.ran')).toBeUndefined();
  expect(told.filter((line) => line.startsWith('http'))).toEqual([]);
  expect(told.filter((line) => line.includes('Content Security Policy'))).toHaveLength(3);
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
  for (const what of ['.strip svg', '.strip input', '.scroll:has(svg)']) expect(await direction(what)).toBe('ltr');
});

check('a day is read hour by hour with the keys, and with the pointer', async (browser) => {
  const { page, told } = await opened(browser, clinic, DESK);
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
  expect(told).toEqual([]);
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

check('the patient paper prints on the two sides of one sheet', async (browser) => {
  for (const [name, html] of papers) {
    if (!name.endsWith('patient')) continue;
    const { page } = await opened(browser, html, DESK);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g), name).toHaveLength(2);
    await page.context().close();
  }
});

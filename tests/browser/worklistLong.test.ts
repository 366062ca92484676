import { expect } from 'vitest';
import { contentOf, listSpeaker, worklistReport } from '../../src/clinic/lists.ts';
import { USUAL } from '../../src/clinic/thresholds.ts';
import { rank } from '../../src/clinic/worklist.ts';
import type { Facts } from '../../src/model/clinic.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import { facts, outcome } from '../clinic/outcomes.ts';
import { english } from '../support/english.ts';
import { ownTemplate, webPage } from '../support/webPage.ts';
import { inBrowser } from './browser.ts';

const PEOPLE = 10_000;

/** One in ten with a very low event, one in a hundred not read, a visit for every second. */
async function longList(): Promise<string> {
  const none = facts();
  const outcomes = Array.from({ length: PEOPLE }, (_, i) => {
    const low: Partial<Facts> = { lows: { ...none.lows!, count: 1, level2: 1, longest: i % 500 } };
    const code = `P-${String(i + 1).padStart(5, '0')}`;
    const visit = (i % 2 === 0 ? `2026-03-0${1 + (i % 5)}` : null) as LocalDate | null;
    return outcome({ code, stem: code, visit, facts: i % 100 === 7 ? null : facts(i % 10 === 0 ? low : {}) });
  });
  const content = contentOf(rank(outcomes, USUAL), USUAL, [], true);
  const printing = { paper: 'a4' as const, printed: '2026-03-01', version: '1', clinic: undefined };
  return webPage(worklistReport(content, listSpeaker(english), printing, 'screen'), await ownTemplate());
}

inBrowser()(
  'a list of ten thousand is shown in pieces, found by group, visit and code, sorted, and printed by group',
  async (browser) => {
    const html = await longList();
    expect(html.length).toBeLessThan(12_000_000);
    const page = await browser.newPage();
    const messages: string[] = [];
    page.on('console', (message) => messages.push(message.text()));
    page.on('pageerror', (error) => messages.push(String(error)));
    await page.route('**/*', (route) =>
      route.request().url() === 'http://list.test/'
        ? route.fulfill({ contentType: 'text/html', body: html })
        : route.abort(),
    );
    await page.goto('http://list.test/');
    const shown = () => page.locator('.finder .shown').textContent();
    const codes = () => page.locator('table.sortable tbody tr th[scope=row]').allTextContents();
    expect(await shown()).toBe('1 to 100 of 10000 found, of 10000');
    expect((await codes()).length).toBe(100);
    expect((await codes())[0]).toBe('P-00008');
    await page.getByRole('button', { name: 'Next' }).click();
    expect(await shown()).toBe('101 to 200 of 10000 found, of 10000');
    await page.getByLabel('Group', { exact: true }).selectOption('Very low');
    expect(await shown()).toBe('1 to 100 of 1000 found, of 10000');
    await page.getByLabel('Visit').selectOption({ index: 1 });
    expect(await shown()).toMatch(/^1 to 100 of \d+ found/);
    await page.getByLabel('Visit').selectOption('');
    await page.getByLabel('Code').fill('p-0990');
    expect(await codes()).toEqual(['P-09901']);
    await page.getByLabel('Code').fill('');
    // By code, downwards: the sorting goes over all, not over the piece that is shown.
    await page.getByRole('button', { name: 'Code' }).click();
    await page.getByRole('button', { name: 'Code' }).click();
    expect((await codes())[0]).toBe('P-09991');
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('tr.group').allTextContents()).toEqual(['Very low: 1000']);
    expect((await codes()).length).toBe(1000);
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect((await codes()).length).toBe(100);
    await page.getByLabel('Group', { exact: true }).selectOption('');
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('tr.group').allTextContents()).toEqual([
      'Could not be read: 100',
      'Very low: 1000',
      'Steady: 8900',
    ]);
    expect(messages).toEqual([]);
    await page.close();
  },
);

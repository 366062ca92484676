import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { clinic, filesIn } from '../cli/clinicRun.ts';
import { writePeople } from '../support/people.ts';
import { inBrowser } from './browser.ts';
import { chooseFolder, listed, rested } from './pageFolderOpened.ts';
import { openAgain, savedBy, until } from './pageOpened.ts';
import { expectSame } from './sameFiles.ts';

const check = inBrowser();
const scratch = mkdtempSync(join(tmpdir(), 'daybands-list-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const codes = (page: Page): Promise<string[]> => page.locator('.worklist tbody tr:not([hidden]) th').allTextContents();
const inFrame = (page: Page) => page.frameLocator('.framed iframe.paper:not(.coming)');
const framed = (page: Page, text: string): Promise<void> =>
  until(
    page,
    `document.querySelectorAll('.framed iframe').length === 1 &&
      document.querySelector('.framed iframe.paper:not(.coming)')?.contentDocument.body.textContent.includes(${JSON.stringify(text)})`,
  );

/** A folder of people of four weeks, and the papers that were made of them a fortnight ago. */
function twoMornings(): { folder: string; last: string } {
  const folder = join(scratch, 'people');
  const before = join(scratch, 'before');
  writePeople(folder, 5, { days: 28, step: 30 });
  cpSync(folder, before, { recursive: true });
  for (const person of readdirSync(before))
    for (const file of readdirSync(join(before, person))) {
      const path = join(before, person, file);
      const [head, ...rows] = readFileSync(path, 'utf8').trimEnd().split('\n');
      const middle = /\d{4}-\d\d-\d\d/.exec(rows[Math.floor(rows.length / 2)]!)![0];
      writeFileSync(path, `${[head, ...rows.filter((row) => /\d{4}-\d\d-\d\d/.exec(row)![0] < middle)].join('\n')}\n`);
    }
  mkdirSync(join(folder, 'broken'));
  writeFileSync(join(folder, 'broken/notes.csv'), 'no table');
  writeFileSync(join(scratch, 'mine.json'), '{"lows":{"nightEvents":1}}');
  const run = { date: '2026-06-01', clinic: 'Any clinic', out: '../now', since: '../last', places: 2, further: true };
  writeFileSync(join(folder, 'settings.json'), JSON.stringify(run));
  const ran = clinic(scratch, 'clinic', before, '--out', join(scratch, 'last'));
  expect([0, 2], ran.err).toContain(ran.exit);
  return { folder, last: join(scratch, 'last') };
}

check(
  'the settings of a folder hold for its run, and people are compared with visit files that were brought, as the command does',
  async (browser) => {
    const { folder, last } = twoMornings();
    const { page, messages } = await openAgain(browser);
    await chooseFolder(page, folder);
    expect(await page.locator('#who .grave').textContent()).toContain('not brought: last');
    await page.setInputFiles('#who input[webkitdirectory]', last);
    await until(page, `document.querySelector('#who .earlier').textContent.includes('5 files of 5 people')`);
    expect(await page.locator('#who .grave').count()).toBe(0);
    await page.click('[data-do=begin]');
    await rested(page);
    const ran = clinic(scratch, 'clinic', folder, '--out', join(scratch, 'now'));
    expect(ran.exit, ran.err).toBe(2);
    const command = filesIn(join(scratch, 'now'));
    expect(await listed(page)).toBe(command.get('worklist.csv')!.toString('utf8'));
    expect(command.get('worklist.csv')!.toString('utf8')).toMatch(/noise|Closer|Further/i);
    // Where the day is full, a line goes through the list.
    expect(await page.locator('.worklist tr.line').textContent()).toMatch(/^The day has 2 places/);
    for (const name of command.keys()) if (/(^run-|\/record\.json$)/.test(name)) command.delete(name);
    expectSame(unzipSync((await savedBy(page, 'everything')).bytes), command);
    await rested(page);

    // The same list to sort, and in its groups as it is printed.
    await page.click('#tab-screen');
    await framed(page, 'How people were put in order');
    expect(await inFrame(page).locator('h1').textContent()).toBe('Worklist of June 1, 2026');
    const sorted = async (): Promise<string> =>
      (await inFrame(page).locator('table').nth(1).locator('tbody tr').first().textContent())!;
    const first = await sorted();
    await inFrame(page).locator('thead button', { hasText: 'Code' }).click();
    await inFrame(page).locator('thead button', { hasText: 'Code' }).click();
    expect(await sorted()).not.toBe(first);
    await page.click('#tab-paper');
    await framed(page, 'For the places of the day');
    await page.locator('#tab-paper').press('ArrowRight');
    expect(await page.evaluate('document.activeElement.id')).toBe('tab-list');

    // Anyone is found by code and by group; another number of places moves the line at once.
    expect(await codes(page)).toHaveLength(6);
    await page.getByLabel('Find a code').fill('0003');
    expect(await codes(page)).toEqual(['P-0003']);
    await page.getByLabel('Find a code').fill('');
    await page.getByLabel('Group').selectOption('Could not be read');
    expect(await codes(page)).toEqual(['broken']);
    await page.getByLabel('Group').selectOption('');
    await page.click('text=How people are put in order');
    await page.locator('[data-do=places]').fill('1');
    await page.locator('[data-do=places]').blur();
    await until(page, `document.querySelector('.worklist tr.line').textContent.startsWith('The day has 1 place')`);
    expect(await page.locator('.worklist tbody tr').nth(1).getAttribute('class')).toBe('line');
    expect(messages).toEqual([]);
  },
);

check('nobody is compared where the tick is taken out', async (browser) => {
  const { page, messages } = await openAgain(browser);
  await chooseFolder(page, join(scratch, 'people'));
  await page.setInputFiles('#who input[webkitdirectory]', join(scratch, 'last'));
  await page.getByLabel('Compare everyone with them').uncheck();
  await page.click('[data-do=begin]');
  await rested(page);
  expect(await listed(page)).toMatch(/not compared/);
  expect(messages).toEqual([]);
});

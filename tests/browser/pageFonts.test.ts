import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { run } from '../cli/run.ts';
import { madePerson } from '../support/people.ts';
import { home } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { chooseFolder, rested } from './pageFolderOpened.ts';
import { bringFolder, faults, openAgain, savedAll, savedBy, settled, until } from './pageOpened.ts';
import { expectSame } from './sameFiles.ts';

const check = inBrowser();
const scratch = mkdtempSync(join(tmpdir(), 'daybands-fonts-'));
afterAll(() => rmSync(scratch, { recursive: true }));

/** A person whose name is Greek, Cyrillic, Arabic and Japanese, as the page's own two fonts have the first two only. */
const NAME = 'Ελένη Жанна ليلى 桜';
const folder = join(scratch, 'people');
mkdirSync(join(folder, 'P-1'), { recursive: true });
writeFileSync(join(folder, 'P-1/readings.csv'), madePerson(0, { days: 2, step: 30 }).readings);
writeFileSync(join(folder, 'P-1/settings.json'), JSON.stringify({ name: NAME, code: 'P-1', date: '2026-03-01' }));

mkdirSync(join(folder, 'P-2'));
writeFileSync(join(folder, 'P-2/readings.csv'), madePerson(1, { days: 2, step: 30 }).readings);

const font = (name: string): string => join(home, 'dist/fonts', name);
const add = async (page: Page, ...files: string[]): Promise<void> => {
  await page.setInputFiles('#faces input, #save-all ~ .grave input', files);
};
const notice = (page: Page): Promise<string | null> => page.textContent('#faces');

check(
  'letters without a font are named, and with fonts that are added the papers are the command’s',
  async (browser) => {
    const { page, messages } = await openAgain(browser);
    await page.check('input[value=visit]');
    await bringFolder(page, join(folder, 'P-1'));
    expect(await notice(page)).toMatch(/no font for them: (?=.*ل)(?=.*桜)/);
    expect(await notice(page)).not.toMatch(/[ΕЖ]/);
    expect(await faults(page)).toEqual([]);
    // What is no font is said, and nothing is lost by it.
    await add(page, join(folder, 'P-1/readings.csv'));
    await until(page, `document.querySelector('#faces').textContent.includes('readings.csv is no font')`);
    await add(page, font('DejaVuSans.ttf'), font('DejaVuSans-Bold.ttf'));
    await until(page, `/no font for them: 桜/.test(document.querySelector('#faces').textContent)`);
    await add(page, font('NotoSansHans-Regular.otf'));
    await until(page, `document.querySelector('#faces').hidden`);
    await settled(page);
    const own = await savedAll(page);
    const out = join(scratch, 'o');
    expect(run(home, ['report', join(folder, 'P-1'), '--out', out, '--further', '--html', '--snapshot']).exit).toBe(0);
    expectSame(own, new Map(readdirSync(out).map((name) => [name, readFileSync(join(out, name))])));
    expect(messages).toEqual([]);
  },
);

check('of a folder, whose papers were saved with marks is said, and saved again without them', async (browser) => {
  const { page, messages } = await openAgain(browser);
  await chooseFolder(page, folder);
  await page.click('[data-do=begin]');
  await rested(page);
  const saved = async (): Promise<Uint8Array> => {
    const { bytes } = await savedBy(page, 'everything');
    await rested(page);
    return unzipSync(bytes)['P-1/P-1-patient-paper.pdf']!;
  };
  // The tab of the first test is open still, but its page is not: what was added there is gone.
  const marked = await saved();
  expect(await page.textContent('#who')).toMatch(/saved with marks: P-1/);
  await add(page, font('DejaVuSans.ttf'), font('NotoSansHans-Regular.otf'));
  await until(page, `!document.querySelector('#who').textContent.includes('saved with marks')`);
  const whole = await saved();
  expect(await page.textContent('#who')).not.toMatch(/saved with marks/);
  expect(whole.length).toBeGreaterThan(marked.length);
  expect(messages).toEqual([]);
});

import { mkdtempSync, rmSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { writePeople } from '../support/people.ts';
import { chooseFolder, rested } from './pageFolderOpened.ts';
import { PAGE, savedBy } from './pageOpened.ts';

// Run where there is no network (`unshare -rn`): a folder of people from files to a saved archive.

const there = Object.keys(networkInterfaces()).filter((name) => name !== 'lo');
if (there.length > 0) throw new Error(`There is a network: ${there.join(', ')}`);
const scratch = mkdtempSync(join(tmpdir(), 'daybands-alone-'));
writePeople(scratch, 2, { days: 2, step: 30 });
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
const page = await (await browser.newContext({ locale: 'en-US' })).newPage();
page.setDefaultTimeout(120_000);
await page.goto(PAGE);
await chooseFolder(page, scratch);
await page.click('[data-do=begin]');
await rested(page);
const people = await page.locator('.worklist tbody tr').count();
const { bytes } = await savedBy(page, 'everything');
console.log(`no network, ${people} people listed, ${bytes.length > 10_000 ? 'all saved' : 'nothing saved'}`);
await browser.close();
rmSync(scratch, { recursive: true });

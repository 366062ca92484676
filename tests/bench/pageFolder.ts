import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { chooseFolder, rested } from '../browser/pageFolderOpened.ts';
import { PAGE } from '../browser/pageOpened.ts';
import { writePeople } from '../support/people.ts';
import { isPage, tracer } from './engine.ts';
import { below, memoryOf } from './processes.ts';

// A folder of people in the page, in Chromium: `npx tsx tests/bench/pageFolder.ts 100 300`. Needs dist/daybands.html. Times are of this
// machine as it is at the moment; memory is what the page's process holds for itself and its part of what it shares, at its largest.

async function measure(people: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'daybands-many-'));
  writePeople(folder, people, { days: 14, step: 5 });
  const server = await chromium.launchServer({
    executablePath: '/usr/bin/chromium',
    args: ['--headless', '--no-sandbox', '--disable-gpu'],
  });
  let [largest, all] = [0, 0];
  const sample = setInterval(() => {
    const pids = below(server.process().pid!);
    largest = Math.max(largest, ...pids.filter(isPage).map(memoryOf));
    all = Math.max(
      all,
      pids.map(memoryOf).reduce((sum, one) => sum + one, 0),
    );
  }, 500);
  try {
    const browser = await chromium.connect(server.wsEndpoint());
    const page = await (await browser.newContext({ locale: 'en-US' })).newPage();
    // Each step says how far it is: on a busy machine one may take minutes, and none waits for ever.
    page.setDefaultTimeout(900_000);
    const step = (name: string): void => console.error(`${people} people: ${name}`);
    await page.goto(PAGE);
    let traced = await tracer(browser);
    const tasks: string[] = [];
    const next = async (): Promise<void> => {
      const { clock, cpu } = await traced();
      tasks.push(`${cpu} (${clock})`);
      traced = await tracer(browser);
    };
    const since = (start: number): string => ((performance.now() - start) / 1000).toFixed(1);
    // From the choice on: the driver copies the files into the browser before it, which takes longer than all of this.
    await page.evaluate(`addEventListener('change', () => (window.chosen ??= performance.now()), { capture: true })`);
    await chooseFolder(page, folder, 300_000);
    const chosen = (Number(await page.evaluate('performance.now() - window.chosen')) / 1000).toFixed(1);
    step(`chosen after ${chosen} s`);
    await next();
    let start = performance.now();
    await page.click('[data-do=begin]');
    await page.waitForSelector('.worklist tbody tr');
    const row = since(start);
    await rested(page, 600_000);
    const read = since(start);
    step(`read after ${read} s`);
    await next();
    start = performance.now();
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 900_000 }),
      page.click('[data-save=everything]'),
    ]);
    const saved = since(start);
    step(`saved after ${saved} s`);
    const path = join(folder, 'all.zip');
    await download.saveAs(path);
    const { size } = statSync(path);
    const cells = [people, chosen, row, read, saved, (size / 1e6).toFixed(1)];
    await next();
    console.log(`| ${[...cells, tasks.join(', '), Math.round(largest), Math.round(all)].join(' | ')} |`);
    await browser.close();
  } finally {
    clearInterval(sample);
    await server.close();
    rmSync(folder, { recursive: true });
  }
}

console.log(
  '| people | chosen, s | first line, s | all read, s | all saved, s | zip, MB | longest tasks, ms of processor (by the clock) | page, MB | all, MB |',
);
for (const people of process.argv.slice(2).map(Number)) await measure(people);

import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { breakSome } from '../cli/brokenPeople.ts';
import { clinic, filesIn } from '../cli/clinicRun.ts';
import { writePeople } from '../support/people.ts';
import { home } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { chooseFolder, FOLDER, listed, openFolderPage, rested } from './pageFolderOpened.ts';
import { bring, bringFolder, openPage, savedBy, settled, until } from './pageOpened.ts';
import { expectSame } from './sameFiles.ts';

const check = inBrowser();
const scratch = mkdtempSync(join(tmpdir(), 'daybands-folder-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const SMALL = { days: 2, step: 30 };
const hostile = (name: string): string => join(home, 'sample-data/hostile', name);

/** A folder of people of its own. */
function folderOf(name: string, people: number): string {
  const folder = join(scratch, name);
  writePeople(folder, people, SMALL);
  return folder;
}

const begin = async (page: Page): Promise<void> => {
  await page.click('[data-do=begin]');
  await rested(page);
};
const codes = (page: Page): Promise<string[]> => page.locator('.worklist tbody th').allTextContents();
const line = (page: Page, code: string) => page.locator('.worklist tbody tr').filter({ hasText: code });

/** Sixty people with everything that goes wrong in a folder, and all that a folder may say of them. */
function sixty(): string {
  const folder = folderOf('sixty', 40);
  breakSome(folder, false);
  const settings = (path: string, content: unknown): void =>
    writeFileSync(join(folder, path, 'settings.json'), JSON.stringify(content));
  settings('', { date: '2026-06-01', clinic: 'Any clinic', paper: 'letter' });
  settings('P-0002', { targets: 'older', large: true, layout: '../layout.json' });
  writeFileSync(join(folder, 'layout.json'), '{"unit":"mg/dL"}');
  settings('P-0003', { language: 'es', grey: true });
  mkdirSync(join(folder, 'P-0004/inner'));
  cpSync(join(folder, 'P-0004/logbook.csv'), join(folder, 'P-0004/inner/logbook.csv'));
  return folder;
}

check('sixty people, of whom many are broken: worklist and papers are those of the command', async (browser) => {
  const folder = sixty();
  const rules = join(scratch, 'rules.json');
  writeFileSync(rules, '{"lows":{"nightEvents":1},"data":{"days":2,"share":0.5}}');
  const { page, messages } = await openPage(browser, { timezoneId: 'Pacific/Auckland' });
  await chooseFolder(page, folder);
  // Who is there is shown before anything is read.
  expect(await page.locator('#who').textContent()).toContain('with a manifest. Who was found:');
  await begin(page);
  await page.setInputFiles('#who input[accept=".json"]', rules);
  await until(page, `document.querySelector('#who').textContent.includes('rules.json')`);
  const out = join(scratch, 'out');
  const ran = clinic(scratch, 'clinic', folder, '--out', out, '--thresholds', rules);
  expect(ran.exit, ran.err).toBe(2);
  const command = filesIn(out);
  expect(await listed(page)).toBe(command.get('worklist.csv')!.toString('utf8'));
  expect(await page.locator('.worklist tbody tr').count()).toBe(await page.locator('#who tbody tr').count());
  // What remembers a run is the command's own.
  for (const name of command.keys()) if (/(^run-|\/record\.json$)/.test(name)) command.delete(name);
  const { name, bytes } = await savedBy(page, 'everything');
  expect(name).toBe('sixty-papers.zip');
  expectSame(unzipSync(bytes), command);
  expect(messages).toEqual([]);
  await page.context().close();
});

check('stopped, whoever was not reached stands first; a worker that dies takes one person with it', async (browser) => {
  const folder = folderOf('stopped', 9);
  const { page, messages } = await openFolderPage(browser);
  await chooseFolder(page, folder);
  await page.evaluate(`window.crash = ['P-0002']; window.held = ['P-0006']`);
  await page.click('[data-do=begin]');
  await until(page, `document.querySelectorAll('.worklist tbody tr').length === 5`);
  expect(await page.locator('.far').textContent()).toMatch(/^5\sof\s9\s·\s[\d.]+\sa\ssecond\s·\s\d+:\d\d\sleft$/);
  await page.click('text=Pause');
  await rested(page);
  expect((await codes(page)).slice(0, 5)).toEqual(['P-0002', 'P-0006', 'P-0007', 'P-0008', 'P-0009']);
  expect(await line(page, 'P-0002').textContent()).toMatch(/the worker ended before it was done/);
  expect(await line(page, 'P-0009').textContent()).toMatch(/not begun/);
  await page.evaluate('window.held = []');
  await page.click('text=Go on');
  await rested(page);
  expect(await page.locator('.worklist').textContent()).not.toMatch(/not begun/);
  expect(await line(page, 'P-0002').textContent()).toMatch(/the worker ended/);
  // Opened by itself, the same person can be read, and stands then among the others.
  expect(messages).toEqual([]);
  await page.context().close();
});

check(
  'anyone is opened, asked about and back in the worklist with what was answered; a crash loses none of it',
  async (browser) => {
    const folder = folderOf('asked', 3);
    mkdirSync(join(folder, 'Q-1'));
    cpSync(hostile('wrong-unit-in-header.csv'), join(folder, 'Q-1/readings.csv'));
    const { page, messages } = await openFolderPage(browser);
    await chooseFolder(page, folder);
    await begin(page);
    expect((await codes(page))[0]).toBe('Q-1');
    await page.getByRole('button', { name: 'Open Q-1' }).click();
    await settled(page);
    await page.locator('.reading input').nth(1).check();
    await page.evaluate(`window.crash = ['read']`);
    await page.click('text=Read again with these answers');
    await until(page, `document.querySelector('#status .grave')`);
    await page.evaluate('window.crash = []');
    await page.click('text=Try again');
    await until(page, `document.querySelector('iframe.paper:not(.coming)')`);
    expect(await page.locator('#told h2').textContent()).toContain('Q-1');
    await page.click('text=Back to all people');
    await rested(page);
    await until(page, `!document.querySelector('.worklist').textContent.includes('Could not be read')`);
    await page.getByRole('button', { name: 'Open P-0002' }).click();
    await settled(page);
    expect(await page.getByRole('tab').count()).toBe(3);
    const saved = await savedBy(page, 'visit');
    expect(saved.name).toBe('P-0002-visit-2026-02-03.json');
    await page.click('text=Back to all people');
    // Straight into a folder where the engine can; what lies in one already is never written over.
    await page.evaluate(FOLDER);
    await page.click('[data-save=folder]');
    await until(page, `document.querySelector('#who [role=status]').textContent === 'Saved.'`);
    const written = (await page.evaluate('window.written')) as Record<string, number>;
    expect(Object.keys(written)).toEqual(expect.arrayContaining(['worklist.pdf', `Q-1/Q-1-clinic-report.pdf`]));
    expect(Object.values(written).every((size) => size > 0)).toBe(true);
    await page.click('[data-save=folder]');
    await until(page, `document.querySelector('#who [role=status]').textContent.includes('Choose an empty folder')`);
    expect(messages).toEqual([]);
    await page.context().close();
  },
);

check(
  'words typed at the visits of a folder go with everything that is saved, and are asked about until then',
  async (browser) => {
    const { page, messages } = await openPage(browser);
    await page.check('input[value=visit]');
    await chooseFolder(page, folderOf('typed', 3));
    await begin(page);
    const visit = async (code: string, goal: string): Promise<void> => {
      await page.getByRole('button', { name: `Open ${code}` }).click();
      await settled(page);
      await page.locator('[data-field=goal]').fill(goal);
      await page.locator('[data-field=goal]').blur();
    };
    const toAll = async (): Promise<void> => {
      await page.click('text=Back to all people');
      await rested(page);
    };
    const asked: string[] = [];
    page.on('dialog', (dialog) => {
      asked.push(dialog.message());
      void dialog.dismiss();
    });
    await visit('P-0001', 'a goal of the first');
    await toAll();
    await visit('P-0002', 'a goal of the second');
    // A file of the one does not hold the words of the other.
    await savedBy(page, 'visit');
    await until(page, `document.querySelector('#kept').textContent.includes('holds these words')`);
    await page.click('text=Start again');
    expect(asked).toHaveLength(1);
    await toAll();
    const { bytes } = await savedBy(page, 'everything');
    const own = unzipSync(bytes);
    const left = (code: string) =>
      JSON.parse(Buffer.from(own[`${code}/${code}-visit-2026-02-03.json`]!).toString('utf8')).agreed;
    expect(left('P-0001')).toMatchObject({ goal: 'a goal of the first' });
    expect(left('P-0002')).toMatchObject({ goal: 'a goal of the second' });
    expect(left('P-0003') ?? null).toBeNull();
    await rested(page);
    await page.click('text=Start again');
    expect(asked).toHaveLength(1);
    expect(messages).toEqual([]);
    await page.context().close();
  },
);

check('who is answered for while others are read is read again afterwards', async (browser) => {
  const folder = folderOf('meanwhile', 3);
  mkdirSync(join(folder, 'A-1'));
  cpSync(hostile('wrong-unit-in-header.csv'), join(folder, 'A-1/readings.csv'));
  const { page, messages } = await openFolderPage(browser);
  await chooseFolder(page, folder);
  await page.evaluate(`window.held = ['P-0003']`);
  await page.click('[data-do=begin]');
  await until(page, `document.querySelectorAll('.worklist tbody tr').length === 3`);
  await page.getByRole('button', { name: 'Open A-1' }).click();
  await settled(page);
  await page.locator('.reading input').nth(1).check();
  await page.click('text=Read again with these answers');
  await until(page, `document.querySelector('iframe.paper:not(.coming)')`);
  await page.click('text=Back to all people');
  expect(await line(page, 'A-1').textContent()).toContain('Could not be read');
  await page.evaluate('window.held = []; window.waiting.forEach((go) => go())');
  await rested(page);
  await until(page, `!document.querySelector('.worklist').textContent.includes('Could not be read')`);
  expect(await page.locator('.worklist tbody tr').count()).toBe(4);
  expect(messages).toEqual([]);
  await page.context().close();
});

check('files and folders are dropped anywhere, and a table is pasted', async (browser) => {
  // Not in memory, where the suite writes what it can: Chromium gives no page a folder that lies under /dev.
  const folder = join(home, 'node_modules/.cache/daybands-dropped');
  rmSync(folder, { recursive: true, force: true });
  cpSync(folderOf('dropped', 2), folder, { recursive: true });
  const { page, messages } = await openPage(browser);
  const drop = async (...files: string[]): Promise<void> => {
    const session = await page.context().newCDPSession(page);
    const data = { items: [], files, dragOperationsMask: 1 };
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
      await session.send('Input.dispatchDragEvent', { type, x: 600, y: 500, data });
  };
  await drop(folder);
  await until(page, `document.querySelector('[data-do=begin]')`);
  expect(await page.locator('#who h2').textContent()).toBe('2 people');
  await page.click('text=Start again');
  await drop(join(folder, 'P-0001/sensor.csv'));
  await settled(page);
  expect(await page.locator('iframe').count()).toBe(1);
  await page.click('text=Start again');
  // Anywhere but in a field, a table that was copied is a file.
  const table = clipboardEvent(filesIn(folder).get('P-0001/sensor.csv')!.toString('utf8'));
  await page.evaluate(table);
  await settled(page);
  expect(await page.locator('iframe').count()).toBe(1);
  expect(messages).toEqual([]);
  await page.context().close();
  rmSync(folder, { recursive: true });
});

const clipboardEvent = (text: string): string => `(() => {
  const clipboardData = new DataTransfer();
  clipboardData.setData('text/plain', ${JSON.stringify(text)});
  document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
})()`;

check('what a large file takes is said, and reading it can be ended', async (browser) => {
  const large = join(scratch, 'large.csv');
  const minutes = Array.from({ length: 600_000 }, (_, i) =>
    new Date(Date.UTC(2025, 0, 1) + i * 60_000).toISOString().slice(0, 16),
  );
  writeFileSync(
    large,
    `Time,Sensor glucose (mg/dL)\n${minutes.map((time, i) => `${time},${100 + (i % 60)}`).join('\n')}\n`,
  );
  const { page, messages } = await openPage(browser);
  await page.setInputFiles('input[type=file]', large);
  // 13 MB at 3 MB a second.
  await until(page, `document.querySelector('#status').textContent.includes('These files hold 13')`);
  expect(await page.locator('#status').textContent()).toMatch(/0:04/);
  await page.click('text=End this');
  expect(await page.locator('.drop').count()).toBe(1);
  await bring(page, [join(folderOf('small', 1), 'P-0001/sensor.csv')]);
  expect(await page.locator('iframe').count()).toBe(1);
  expect(messages).toEqual([]);
  await page.context().close();
});

check('a manifest that cannot be used is said, and nobody is read by half of it', async (browser) => {
  const { page } = await openPage(browser);
  const folder = folderOf('unreadable', 2);
  writeFileSync(join(folder, 'manifest.csv'), 'person,colour\nP-0001,blue\n');
  await bringFolder(page, folder);
  expect(await page.locator('#who .grave').textContent()).toContain('colour');
  expect(await page.locator('[data-do=begin]').count()).toBe(0);
  await page.click('text=Start again');
  await bring(page, { 'a.csv': 'x', 'b.csv': 'y' });
  await page.click("text=Read them as several people's");
  await begin(page);
  expect(await codes(page)).toEqual(['a', 'b']);
  await page.context().close();
});

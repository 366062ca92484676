import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { home } from '../support/story.ts';
import { open as openPaper } from '../writers/paper.ts';
import { inBrowser } from './browser.ts';
import { DESK, NARROWEST, overflow } from './opened.ts';
import { bring, faults, openPage, savedAll, settled, until } from './pageOpened.ts';
import { expectSame, writtenByCommand } from './sameFiles.ts';

const check = inBrowser();

const HOSTILE = '<img src=x onerror=alert(1)> =1+1 "quoted" </script>\u202egnol';
/** As the visit file takes it: signs that turn the direction are gone. */
const PLAIN = HOSTILE.replace('\u202e', '');

/** Rows of a story up to a day: a first visit brings the fortnight, a second one all of it. */
const daysTo = (last: string): Record<string, string> =>
  Object.fromEntries(
    ['readings.csv', 'logbook.csv'].map((name) => {
      const text = readFileSync(join(home, 'sample-data/four-visits', name), 'utf8');
      const [head, ...rows] = text.trimEnd().split('\n');
      return [name, `${[head, ...rows.filter((row) => row.slice(0, 10) <= last)].join('\n')}\n`];
    }),
  );
const settingsOn = (date: string): string => JSON.stringify({ code: 'HL-131', zone: 'Europe/Lisbon', date });
const FIRST = { ...daysTo('2026-07-19'), 'settings.json': settingsOn('2026-07-21') };

const field = (page: Page, name: string) => page.locator(`#visit [data-field="${name}"]`);
const write = async (page: Page, name: string, text: string): Promise<void> => {
  await field(page, name).fill(text);
  await field(page, name).blur();
};
const shown = (page: Page, text: string): Promise<void> =>
  until(
    page,
    `document.querySelectorAll('iframe').length === 1 &&
      document.querySelector('iframe').contentDocument.body.textContent.includes(${JSON.stringify(text)})`,
  );
const paper = (page: Page) => page.frameLocator('iframe.paper:not(.coming)').locator('main');

/** What a click makes the browser save, by name. */
async function saved(page: Page, click: string, files: number): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  page.on('download', async (one) => {
    found[one.suggestedFilename()] = readFileSync(await one.path(), 'utf8');
  });
  await page.click(click);
  for (let i = 0; i < 200 && Object.keys(found).length < files; i++) await page.waitForTimeout(50);
  page.removeAllListeners('download');
  return found;
}

/** What the command makes of the same files, with the topic and the words that the page saved. */
function written(topic: string, agreed: string): Map<string, Buffer> {
  const folder = mkdtempSync(join(tmpdir(), 'daybands-visit-'));
  for (const [name, text] of Object.entries({ ...FIRST, 'agreed.json': agreed }))
    writeFileSync(join(folder, name), text);
  const files = writtenByCommand(folder, '--topic', topic, '--agreed', join(folder, 'agreed.json'));
  rmSync(folder, { recursive: true });
  return files;
}

check('a visit is led, typed, saved as the command writes it, and opened again at the next', async (browser) => {
  const { page, messages } = await openPage(browser);
  await page.check('input[value=visit]');
  await bring(page, FIRST);
  // A topic among those found, each with what it rests on.
  const ruled = await page.locator('#visit .topics strong').first().textContent();
  const topic = (await page.locator('#visit .topics input').nth(1).getAttribute('value'))!;
  await page.locator('#visit .topics input').nth(1).check();
  await shown(page, 'Chosen for this visit');
  expect(await paper(page).textContent()).toMatch(/Chosen for this visit, not by rule\. By rule: /);
  expect(await paper(page).textContent()).toContain(ruled!);
  expect(await page.evaluate('document.activeElement.value')).toBe(topic);

  // Words, hostile ones too: text everywhere.
  await write(page, 'goal', HOSTILE);
  await write(page, 'step', 'food before football');
  await field(page, 'sure').selectOption('7');
  await field(page, 'nextVisit').fill('2026-08-04');
  await write(page, 'question', 'Why at night?');
  const draft = await field(page, 'interpretation').inputValue();
  await write(page, 'interpretation', `${draft}\nWe start with food.`);
  await write(page, 'remarks', 'new job');
  await write(page, 'by', 'Dr B');
  await shown(page, 'Typed in by Dr B');
  expect(await paper(page).textContent()).toContain(PLAIN);
  expect(await paper(page).locator('img, script').count()).toBe(0);

  // Step by step, it can be taken back.
  await write(page, 'helper', 'a neighbour');
  await page.click('#visit [data-field=undo]');
  expect(await field(page, 'helper').inputValue()).toBe('');
  expect(await field(page, 'by').inputValue()).toBe('Dr B');

  // While no file holds the words, neither is the page left nor are files replaced without a question.
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.dismiss();
  });
  await page.click('text=Start again');
  await page.close({ runBeforeUnload: true });
  for (let i = 0; i < 100 && asked.length < 2; i++) await new Promise((done) => setTimeout(done, 20));
  expect(asked).toEqual(['confirm', 'beforeunload']);
  expect(await field(page, 'goal').inputValue()).toBe(PLAIN);
  expect(await page.locator('#kept').textContent()).toMatch(/Not saved yet/);
  expect(await faults(page)).toEqual([]);
  for (const viewport of [NARROWEST, DESK]) {
    await page.setViewportSize(viewport);
    expect(await overflow({ page, messages }), `overflow at ${viewport.width}`).toBe(0);
  }

  // What is saved is what the command writes of the same words and the same topic.
  await page.locator('#ledger summary').first().click();
  const answers = await saved(page, 'text=Save these answers', 2);
  expect(JSON.parse(answers['settings.json']!)).toEqual({ topic, agreed: 'agreed.json' });
  const own = await savedAll(page);
  await until(page, `document.querySelector('#kept').textContent.includes('holds these words')`);
  expectSame(own, written(topic, answers['agreed.json']!));
  const flat = (text: string): string => text.replace(/\s+/g, '');
  for (const name of ['HL-131-clinic-report.pdf', 'HL-131-patient-paper.pdf']) {
    const { sheets } = await openPaper(own[name]!);
    expect(flat(sheets.map(({ text }) => text).join('')), name).toContain(flat(PLAIN));
  }
  const visit = 'HL-131-visit-2026-07-19.json';
  const left = Buffer.from(own[visit]!).toString('utf8');
  expect(JSON.parse(left)).toMatchObject({
    topic: { id: topic, rule: 'chosen' },
    topicByRule: { rule: expect.any(String) },
    agreed: { goal: PLAIN, step: 'food before football', sure: 7, nextVisit: '2026-08-04', by: 'Dr B' },
  });

  // Saved, nobody is asked any more; the next visit begins with what was agreed at this one.
  await page.click('text=Start again');
  expect(asked).toHaveLength(2);
  await bring(page, { ...daysTo('2026-08-02'), 'settings.json': settingsOn('2026-08-04'), [visit]: left });
  expect(await field(page, 'goal').inputValue()).toBe('');
  await page.getByLabel('Compare with').selectOption('visits');
  await shown(page, 'Last time we agreed');
  expect(await paper(page).textContent()).toMatch(/Last time we agreed/);
  expect(await paper(page).textContent()).toContain(PLAIN);
  // Dragged over the strip of all days: those are looked at, and the dates that can be typed follow.
  await until(page, `document.querySelectorAll('#strip span').length === 28`);
  const box = (await page.locator('#strip .days').boundingBox())!;
  await page.mouse.move(box.x + (box.width * 7.5) / 28, box.y + 10);
  await page.mouse.down();
  await page.mouse.move(box.x + (box.width * 16.5) / 28, box.y + 10);
  await page.mouse.up();
  await until(page, `document.querySelector('#told').textContent.includes('10 days')`);
  expect(await page.getByLabel('First day').inputValue()).toBe('2026-07-13');
  expect(messages).toEqual([]);
  await page.context().close();
});

check(
  'typed by mouse and keys, words stand in the field that was gone to; more files leave them there',
  async (browser) => {
    const { page, messages } = await openPage(browser);
    await page.check('input[value=visit]');
    await bring(page, FIRST);
    const press = async (name: string): Promise<void> => {
      await field(page, name).scrollIntoViewIfNeeded();
      const box = (await field(page, name).boundingBox())!;
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.up();
    };
    const values = () => Promise.all(['goal', 'step', 'helper'].map((name) => field(page, name).inputValue()));
    await press('goal');
    await page.keyboard.type('walks');
    await press('step');
    await page.keyboard.type('shoes');
    await page.keyboard.press('Tab');
    await page.keyboard.type('a friend');
    expect(await values()).toEqual(['walks', 'shoes', 'a friend']);
    await press('undo');
    expect(await values()).toEqual(['walks', 'shoes', '']);
    await page.setInputFiles('.taken input[type=file]', [
      { name: 'a-log.csv', mimeType: 'text/csv', buffer: Buffer.from('Time,Carbohydrate (g)\n2026-07-12 08:00,40\n') },
    ]);
    await until(page, `document.querySelector('.taken').textContent.includes('a-log.csv')`);
    await settled(page);
    expect(await values()).toEqual(['walks', 'shoes', '']);
    expect(messages).toEqual([]);
    await page.context().close();
  },
);

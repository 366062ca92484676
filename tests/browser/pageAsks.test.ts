import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { home } from '../support/story.ts';
import { inBrowser } from './browser.ts';
import { bring, openAgain, openPage, savedBy, settled, until } from './pageOpened.ts';

const check = inBrowser();
const hostile = (name: string): string => join(home, 'sample-data/hostile', name);

const go = async (page: Page): Promise<void> => {
  await page.evaluate(`document.querySelector('#asked h2').dataset.before = 'yes'`);
  await page.click('text=Read again with these answers');
  await until(page, `!document.querySelector('[data-before]') || document.querySelector('.wanted:not(:empty)')`);
  await settled(page);
};
const analysis = async (page: Page) =>
  JSON.parse(Buffer.from((await savedBy(page, 'analysis')).bytes).toString('utf8')) as {
    settings: Record<string, unknown>;
    ledger: Record<string, number>;
  };

type Answers = (page: Page) => Promise<unknown>;
const pick =
  (n: number): Answers =>
  (page) =>
    page.locator('.reading input').nth(n).check();

/** Files that are refused, the answers that a person gives round by round, and what then holds. */
const ASKED: [file: string, rounds: Answers[], holds: Record<string, unknown>][] = [
  // A series that is nobody's in either unit wants a confirmation of its own, beside the unit.
  ['no-unit-could-be-either.csv', [pick(1), pick(0)], { unit: 'mmol/L', layout: { series: 'confirmed' } }],
  ['unit-changes-midway.csv', [pick(0)], { layout: { units: 'by-size' } }],
  ['wrong-unit-in-header.csv', [pick(1)], { layout: { unit: 'mmol/L' } }],
  [
    'two-value-columns.csv',
    [
      async (page) => {
        await page.locator('.meaning select').nth(0).selectOption('sensor');
        await page.locator('.meaning select').nth(1).selectOption('ignore');
      },
    ],
    { layout: { meanings: { '#2': 'sensor', '#3': 'ignore' } } },
  ],
];

for (const [file, rounds, holds] of ASKED) {
  check(
    `${file} is asked about with its own rows, nothing chosen beforehand, and the answer settles it`,
    async (browser) => {
      const { page, messages } = await openAgain(browser, { timezoneId: 'UTC' });
      await bring(page, [hostile(file)]);
      const question = page.locator('.question').first();
      const named = readFileSync(hostile(file), 'utf8').split('\n')[0]!.split(',')[0]!;
      expect(await question.locator('table').textContent()).toContain(named);
      expect(await question.locator('legend').textContent()).not.toMatch(/--[a-z]/);
      expect(await page.locator('#asked :checked:not(option[value=""])').count()).toBe(0);
      // Neither the Enter key nor the button alone takes an answer.
      await page.locator('#asked input, #asked select').first().focus();
      await page.keyboard.press('Enter');
      await go(page);
      expect(await page.locator('.wanted').textContent()).not.toBe('');
      for (const answer of rounds) {
        await answer(page);
        await go(page);
      }
      expect((await analysis(page)).settings).toMatchObject(holds);
      expect(messages).toEqual([]);
    },
  );
}

check(
  'an order of dates is asked for with both readings; what then is missing is said with its reason',
  async (browser) => {
    const { page } = await openAgain(browser);
    await bring(page, [hostile('day-or-month.csv')]);
    expect(await page.locator('.reading .shows').allTextContents()).toEqual([
      expect.stringContaining('2026-02-01'),
      expect.stringContaining('2026-01-02'),
    ]);
    await pick(0)(page);
    await go(page);
    // An hour between two values is no sensor's.
    expect(await page.locator('#asked').textContent()).toMatch(
      /No glucose readings could be used.*taken for finger sticks/s,
    );
    await page.click('text=Take the answers back');
    await settled(page);
    expect(await page.locator('.reading').count()).toBe(2);
  },
);

check('two people in one file are never put together, and what can be done is said', async (browser) => {
  const { page } = await openAgain(browser);
  await bring(page, [hostile('two-people.csv')]);
  expect(await page.locator('#asked').textContent()).toMatch(/more than one person \(.*HL-104.*HL-117/s);
  expect(await page.locator('#asked button').count()).toBe(0);
});

check('hostile text stays text', async (browser) => {
  const { page, messages } = await openAgain(browser);
  await bring(page, [hostile('markup.csv')]);
  await page.click('summary:has-text("How the files were read")');
  expect(await page.locator('main img, main a, #ledger script').count()).toBe(0);
  expect(messages).toEqual([]);
});

check('files side by side are asked about before anything is made of them', async (browser) => {
  const rows = 'Time,Sensor glucose (mg/dL)\n2026-03-03 08:00,120\n2026-03-03 08:05,123\n';
  const { page } = await openAgain(browser);
  await bring(page, { 'a.csv': rows, 'b.csv': rows });
  expect(await page.locator('#who h2').textContent()).toBe('Whose files are these?');
  await page.click("text=Read them as several people's");
  expect(await page.locator('#who tbody tr').count()).toBe(2);
  await page.click('text=Open b');
  await settled(page);
  expect(await page.locator('#told h2, #asked h2').first().textContent()).not.toBe('');
});

check(
  'answers are saved as the files that the command reads, and hold when they are dropped again',
  async (browser) => {
    const { page } = await openPage(browser);
    await bring(page, [hostile('no-unit-could-be-either.csv')]);
    for (const n of [1, 0]) {
      await pick(n)(page);
      await go(page);
    }
    await page.click('summary:has-text("How the files were read")');
    const downloads: Record<string, string> = {};
    page.on('download', async (one) => {
      downloads[one.suggestedFilename()] = readFileSync(await one.path(), 'utf8');
    });
    await page.click('text=Save these answers');
    for (let i = 0; i < 100 && Object.keys(downloads).length < 2; i++) await page.waitForTimeout(50);
    expect(JSON.parse(downloads['settings.json']!)).toEqual({ unit: 'mmol/L', layout: 'layout.json' });
    expect(JSON.parse(downloads['layout.json']!)).toEqual({ series: 'confirmed' });
    await page.click('text=Start again');
    await bring(page, { ...downloads, 'a.csv': readFileSync(hostile('no-unit-could-be-either.csv'), 'utf8') });
    expect(await page.locator('iframe').count()).toBe(1);
    await page.context().close();
  },
);

/** Readings of 28 days of March every half hour, in numbers of mg/dL, under a name that tells no unit. */
function readings(): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  const rows = Array.from({ length: 28 * 48 }, (_, i) => {
    const time = `${two(Math.floor((i % 48) / 2))}:${two(30 * (i % 2))}`;
    return `2026-03-${two(1 + Math.floor(i / 48))} ${time},${150 + Math.round(60 * Math.sin(i / 9))}`;
  });
  return ['Time,Sensor glucose', ...rows, ''].join('\n');
}

check(
  'what settings beside the files compare with is shown, can be set aside, and can be had again',
  async (browser) => {
    const { page, messages } = await openAgain(browser);
    const compare = page.getByLabel('Compare with');
    for (const [given, shown] of [
      [{ compare: 'previous' }, 'previous'],
      [{ compare: '2026-03-01..2026-03-10' }, 'lying'],
      [{ changed: '2026-03-15 new job' }, 'lying'],
    ] as const) {
      await page.goto(page.url());
      await page.check('input[value=visit]');
      await bring(page, { 'a.csv': readings(), 'settings.json': JSON.stringify({ unit: 'mg/dL', ...given }) });
      expect(await compare.inputValue()).toBe(shown);
      const before = await analysis(page);
      await compare.selectOption('none');
      await settled(page);
      expect((await analysis(page)).settings.compare).toBe(undefined);
      await compare.selectOption(shown);
      await settled(page);
      expect((await analysis(page)).settings.compare).toEqual(before.settings.compare);
    }
    expect(messages).toEqual([]);
  },
);

check('a unit said on the page that no number can have is said to be wrong, and asked for again', async (browser) => {
  const { page, messages } = await openAgain(browser);
  await bring(page, { 'a.csv': readings() });
  await page.getByLabel('Unit of glucose').selectOption('mmol/L');
  await until(page, `document.querySelector('#asked [data-of=unit]')`);
  await settled(page);
  expect(await page.locator('#asked [data-of=unit] legend').textContent()).toMatch(
    /You said mmol\/L, which does not fit/,
  );
  expect(await page.locator('#asked :checked').count()).toBe(0);
  await page.locator('#asked input[value="mg/dL"]').check();
  await go(page);
  expect((await analysis(page)).settings).toMatchObject({ unit: 'mg/dL' });
  expect(messages).toEqual([]);
});

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { expect } from 'vitest';
import { writePeople } from '../support/people.ts';
import { home } from '../support/story.ts';
import { EVERY_TOOL, needs } from '../support/tools.ts';
import { PAGE, settled, until } from './pageOpened.ts';

const CHROMIUM = '/usr/bin/chromium';

// A word that stands nowhere but in the files, and a code that nobody else has.
const REMARK = 'quince-marmalade-at-noon';
const CODE = 'ZQ-77-ONLYHERE';

function everyFile(folder: string): { path: string; bytes: Buffer }[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path, bytes: readFileSync(path) }));
}

/** Whether a text stands in bytes, as letters of one byte or of two, also where they are packed. */
function holds(bytes: Buffer, text: string): boolean {
  const forms = [bytes];
  for (const open of [gunzipSync, brotliDecompressSync])
    try {
      forms.push(open(bytes));
    } catch {
      // Not packed so.
    }
  return forms.some((form) => form.includes(text, 0, 'latin1') || form.includes(text, 0, 'utf16le'));
}

needs('chromium', existsSync(CHROMIUM))(
  'after closing, the profile of the browser holds no remark and no code of anyone',
  async () => {
    const scratch = mkdtempSync(join(tmpdir(), 'daybands-profile-'));
    const profile = join(scratch, 'profile');
    const folder = join(scratch, 'in');
    writePeople(folder, 2, { days: 2, step: 30 });
    const readings = readFileSync(join(folder, 'P-0001/sensor.csv'), 'utf8');
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: CHROMIUM,
      args: ['--headless', '--no-sandbox', '--disable-gpu'],
      locale: 'en-US',
    });
    const page = await context.newPage();
    await page.goto(PAGE);
    const log = `Time,Carbohydrate (g),Note\n2026-02-02 08:00,40,${REMARK}\n`;
    await page.setInputFiles('input[type=file]', [
      { name: `${CODE}__sensor.csv`, mimeType: 'text/csv', buffer: Buffer.from(readings) },
      { name: `${CODE}__log.csv`, mimeType: 'text/csv', buffer: Buffer.from(log) },
      { name: 'settings.json', mimeType: 'application/json', buffer: Buffer.from(`{"code":"${CODE}"}`) },
    ]);
    await settled(page);
    expect(await page.frameLocator('iframe').locator('body').textContent()).toContain(CODE);
    await page.click('text=Start again');
    await page.setInputFiles('input[webkitdirectory]', folder);
    await until(page, `document.querySelector('[data-do=begin]')`);
    await page.click('[data-do=begin]');
    await until(page, `document.querySelector('.worklist tbody tr') && !document.querySelector('#who progress')`);
    await context.close();
    const files = everyFile(profile);
    expect(files.length).toBeGreaterThan(10);
    const found = files.filter(({ bytes }) => [REMARK, CODE, 'P-0001'].some((text) => holds(bytes, text)));
    expect(found.map(({ path }) => path)).toEqual([]);
    rmSync(scratch, { recursive: true });
  },
  120_000,
);

/** Whether this machine lets a process have a network of its own, which is none. */
const alone = spawnSync('unshare', ['-rn', 'true']).status === 0;

if (EVERY_TOOL)
  needs('unshare', existsSync(CHROMIUM) && alone)(
    'the whole way is gone where there is no network at all',
    () => {
      const script = join(home, 'tests/browser/withoutNetwork.ts');
      const ran = spawnSync('unshare', ['-rn', process.execPath, '--import', 'tsx', script], {
        ...{ cwd: home, encoding: 'utf8', timeout: 170_000 },
      });
      expect([ran.stdout.trim(), ran.stderr]).toEqual(['no network, 2 people listed, all saved', '']);
    },
    180_000,
  );

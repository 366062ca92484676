import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { run } from '../cli/run.ts';
import { inBrowser } from './browser.ts';
import { faults, savedBy, settled } from './pageOpened.ts';

const check = inBrowser();
const folder = mkdtempSync(join(tmpdir(), 'daybands-clinic-'));
afterAll(() => rmSync(folder, { recursive: true }));
/** Text that would do something, were it markup. */
const CLINIC = 'Harbour Lane </script><img src=x onerror=alert(1)> (invented)';

test('the command makes a copy with the clinic’s own, and refuses what a report would refuse', () => {
  writeFileSync(join(folder, 'mine.json'), '{"veryHigh":{"share":0.2}}');
  writeFileSync(join(folder, 'wrong.json'), '{"veryHigh":{"shares":0.2}}');
  const ran = run(folder, [
    ...['page', '--clinic', CLINIC, '--language', 'es', '--region', 'es-MX', '--phone', '555 0100'],
    ...['--targets', 'older', '--paper', 'letter', '--thresholds', 'mine.json', '--out', 'ours.html'],
  ]);
  expect(ran.exit, ran.err).toBe(0);
  const html = readFileSync(join(folder, 'ours.html'));
  expect(ran.out).toContain(createHash('sha256').update(html).digest('hex'));
  expect(html.length).toBeLessThan(4_000_000);
  for (const wrong of [
    ['--region', 'es-XX'],
    ['--thresholds', 'wrong.json'],
    ['--zone', 'Nowhere/Town'],
  ])
    expect(run(folder, ['page', ...wrong, '--out', 'wrong.html']).exit, wrong.join()).toBe(64);
});

check('a clinic’s copy begins with its settings, says whose it is, and its name stays text', async (browser) => {
  const context = await browser.newContext({ locale: 'en-US', viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  const messages: string[] = [];
  page.on('console', (message) => messages.push(message.text()));
  page.on('pageerror', (error) => messages.push(error.message));
  page.on('dialog', (dialog) => messages.push(dialog.message()));
  await page.goto(pathToFileURL(join(folder, 'ours.html')).href);
  expect(await page.getAttribute('html', 'lang')).toBe('es');
  const foot = (await page.textContent('#foot'))!;
  expect(foot).toContain(`Hecha para ${CLINIC}`);
  expect(foot).toMatch(/targets older/);
  expect(await faults(page)).toEqual([]);
  await page.setInputFiles('input[type=file]', join('sample-data/steady-fortnight', 'readings.csv'));
  await settled(page);
  const { settings } = JSON.parse(Buffer.from((await savedBy(page, 'analysis')).bytes).toString('utf8'));
  expect(settings).toMatchObject({ targets: 'older', person: { clinic: CLINIC, phone: '555 0100' } });
  const frame = page.frameLocator('iframe.paper');
  expect(await frame.locator('header').textContent()).toContain(CLINIC);
  expect(messages).toEqual([]);
  await context.close();
});

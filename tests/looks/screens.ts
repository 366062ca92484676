import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { COMES } from '../browser/pageComes.ts';
import { openPage } from '../browser/pageOpened.ts';
import { STATES } from '../browser/pageStates.ts';

// Pictures of every state of the page of dist/, to look at: `npx tsx tests/looks/screens.ts FOLDER [state …]`; English light, Spanish dark.

const [folder = 'screens', ...wanted] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--headless', '--no-sandbox'] });
for (const [language, locale, colorScheme] of [
  ['en', 'en-US', 'light'],
  ['es', 'es-MX', 'dark'],
] as const) {
  for (const state of STATES.filter((one) => wanted.length === 0 || wanted.includes(one))) {
    const { page } = await openPage(browser, { locale, colorScheme });
    await COMES[state](page);
    for (const width of [360, 768, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      await page.waitForTimeout(300);
      const path = join(folder, `${state.replaceAll(' ', '-')}-${language}-${width}.png`);
      // A window over the page is as large as the screen.
      await page.screenshot({ path, fullPage: !/guide|day/.test(state) });
    }
    await page.context().close();
  }
}
await browser.close();

import { expect } from 'vitest';
import { inBrowser } from './browser.ts';
import { openAgain, settled, until } from './pageOpened.ts';
import { alone, COLLECT, type Printed, pdfPages } from './printing.ts';

const check = inBrowser();

check(
  'exactly the sheets that are ticked are printed, one after the other, and as PDF on their sides',
  async (browser) => {
    const { page, messages } = await openAgain(browser);
    await page.evaluate(COLLECT);
    await page.check('input[value=visit]');
    await page.click('text=Try it with invented days');
    await settled(page);
    const print = async (...names: string[]): Promise<Printed[]> => {
      await page.evaluate('window.printed = []');
      await page.click('[data-save=print]');
      await until(page, `window.printed.length === ${names.length}`);
      await settled(page);
      const printed = (await page.evaluate('window.printed')) as Printed[];
      expect(printed.map(({ title }) => title)).toEqual(names);
      return printed;
    };
    const both = await print('Report for the care team', 'Sheet for the person');
    // What was looked at stands there again.
    await until(
      page,
      `document.querySelector('[role=tab][aria-selected=true]').textContent === 'Report for the care team'`,
    );
    const tick = (name: string) => page.locator('#saving fieldset').getByLabel(name, { exact: true });
    await tick('Report for the care team').uncheck();
    await print('Sheet for the person');
    await tick('Further pages').check();
    await print('Sheet for the person', 'Further pages');

    const sheet = await browser.newPage();
    await sheet.setContent(alone(both[1]!));
    const pdf = await sheet.pdf({ preferCSSPageSize: true });
    const pages = await pdfPages(pdf);
    expect(pages).toHaveLength(2);
    expect(pages.join(' ')).toMatch(/EXAMPLE.*invented days/s);
    await sheet.close();
    expect(messages).toEqual([]);
  },
);

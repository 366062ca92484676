import { expect } from 'vitest';
import { inBrowser } from './browser.ts';
import { bring, openPage, settled, until } from './pageOpened.ts';
import { remarked } from './remarked.ts';

const check = inBrowser();

/** Notes what a frame shows when it is told to print. */
const LISTEN = `
  globalThis.printed = [];
  const { get } = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow');
  Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
    get() {
      const inside = get.call(this);
      if (inside) inside.print = () => printed.push([...inside.document.querySelectorAll('section.page')].map((page) => page.getAttribute('aria-label')));
      return inside;
    },
  });
`;

check('what is ticked is printed, sheet by sheet, and nothing else', async (browser) => {
  const { page, messages } = await openPage(browser, {}, LISTEN);
  await page.check('input[value=visit]');
  await bring(page, { 'days.csv': remarked() });
  const tick = (label: string) => page.locator('#saving fieldset').getByLabel(label);
  const print = async (papers: number): Promise<string[][]> => {
    await page.evaluate('printed.length = 0');
    await page.click('[data-save=print]');
    await until(page, `printed.length === ${papers}`);
    await settled(page);
    return page.evaluate('printed');
  };
  const REMARKS = 'More remarks, whole';
  const whole = await print(2);
  expect(whole[0]).toContain(REMARKS);
  await tick('Sheet of remarks').uncheck();
  expect(await print(2)).toEqual([whole[0]!.filter((name) => name !== REMARKS), whole[1]]);
  await tick('Report for the care team').uncheck();
  await tick('Sheet of remarks').check();
  await tick('Sheet for the person').uncheck();
  expect(await print(1)).toEqual([[REMARKS]]);
  // Whoever looks on sees the whole report again.
  await until(
    page,
    `document.querySelectorAll('iframe.paper:not(.coming)')[0]?.contentDocument.querySelectorAll('section.page').length === ${whole[0]!.length}`,
  );
  expect(messages).toEqual([]);
  await page.context().close();
});

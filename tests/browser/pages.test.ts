import { expect, test } from 'vitest';
import { inBrowser } from './browser.ts';
import { BUSIEST, DESK, furtherPage, type Opened, opened, overflow, PHONE, violations, webPapers } from './opened.ts';

const check = inBrowser();
const [visit, patient] = webPapers(BUSIEST, 'en').map(({ html }) => html) as [string, string];
/** The page with the most to it: days that can be hidden and read hour by hour. */
const clinic = furtherPage(BUSIEST);

test('there are stories to look at', () => {
  expect(clinic).toBeDefined();
  expect(patient).toBeDefined();
});

check('the look finds faults that were planted', async (browser) => {
  const planted = patient.replace('<h2', '<h4').replace('<html lang="en"', '<html');
  const it = await opened(browser, planted, PHONE);
  const found = (await violations(it)).map((line) => line.split(':')[0]);
  expect(found).toEqual(expect.arrayContaining(['html-has-lang', 'heading-order']));
});

check('the policy holds even if markup had got in', async (browser) => {
  const breach = '<img src="http://elsewhere.test/a.png"><script>window.ran = true</script><p style="color:red">x</p>';
  const { page, messages } = await opened(browser, clinic.replace('</main>', `${breach}</main>`), DESK);
  expect(await page.evaluate('window.ran')).toBeUndefined();
  expect(messages.filter((line) => line.startsWith('http'))).toEqual([]);
  expect(messages.filter((line) => line.includes('Content Security Policy'))).toHaveLength(3);
});

check('with every part opened it is still free of faults', async (browser) => {
  const it = await opened(browser, clinic, PHONE);
  await it.page.evaluate('for (const part of document.querySelectorAll("details")) part.open = true');
  expect(await overflow(it)).toBe(0);
  expect(await violations(it)).toEqual([]);
});

check('where writing runs from right to left, time still runs from left to right', async (browser) => {
  const it = await opened(browser, clinic.replace('dir="ltr"', 'dir="rtl"'), PHONE);
  expect(await overflow(it)).toBe(0);
  expect(await violations(it)).toEqual([]);
  const direction = (what: string) => it.page.evaluate(`getComputedStyle(document.querySelector('${what}')).direction`);
  expect(await direction('main')).toBe('rtl');
  for (const what of ['.strip svg', '.strip input', 'figure > .scroll:has(svg)'])
    expect(await direction(what)).toBe('ltr');
});

check('a day is read hour by hour with the keys, and with the pointer', async (browser) => {
  const { page, messages } = await opened(browser, clinic, DESK);
  const strip = page.locator('.strip').nth(1);
  const pointer = strip.locator('input[type=range]');
  await pointer.focus();
  for (let i = 0; i < 7; i++) await page.keyboard.press('ArrowRight');
  const seventh = await strip.locator('tbody tr').nth(7).locator('th,td').allTextContents();
  const readout = await strip.locator('.readout').textContent();
  for (const cell of seventh) expect(readout).toContain(cell);
  expect(await pointer.getAttribute('aria-valuetext')).toBe(readout);
  const box = (await pointer.boundingBox())!;
  await page.mouse.move(box.x + (box.width * 20.5) / 24, box.y + 10);
  expect(await strip.locator('.readout').textContent()).toContain(
    (await strip.locator('tbody th').nth(20).textContent())!,
  );
  expect(messages).toEqual([]);
});

check('days can be hidden, never in silence, and shown again', async (browser) => {
  const { page } = await opened(browser, clinic, DESK);
  const shown = page.locator('.strip:visible');
  const every = await shown.count();
  await page.locator('.chooser summary').click();
  await page.locator('.chooser input').nth(3).uncheck();
  await page.locator('.chooser input').nth(0).uncheck();
  expect(await shown.count()).toBe(every - 2);
  expect(await page.locator('.shown').textContent()).toContain(`${every - 2} of ${every} days`);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.shown').isVisible(), 'on paper too').toBe(true);
  expect(await shown.count()).toBe(every - 2);
  await page.emulateMedia({ media: 'screen' });
  await page.locator('button[data-set=all]').click();
  expect(await shown.count()).toBe(every);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.shown').isVisible()).toBe(false);
});

check('without its script everything is there to be read', async (browser) => {
  const withScript = await opened(browser, clinic, DESK);
  const without = await opened(browser, clinic, DESK, false);
  const texts = 'p:not(.readout, .shown), li:not(.days li), th, td, svg text';
  const read = ({ page }: Opened) => page.locator('main').locator(texts).allTextContents();
  expect(await read(without)).toEqual(await read(withScript));
  expect(await without.page.locator('.strip:visible').count()).toBe(await withScript.page.locator('.strip').count());
  expect(await without.page.locator('.chooser:visible').count()).toBe(0);
});

check('the skip link comes first and leads past the contents', async (browser) => {
  const { page } = await opened(browser, clinic, DESK);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await page.evaluate('document.activeElement.id')).toBe('report');
});

check('text is large enough: 10.5 points for a clinic, 14 for a patient', async (browser) => {
  const smallest = async (html: string): Promise<number> => {
    const { page } = await opened(browser, html, PHONE);
    return page.evaluate(
      `Math.min(...[...document.querySelectorAll('main :is(p, li, th, td, summary, label, figcaption, h1, h2, h3, h4)')]
        .map((element) => parseFloat(getComputedStyle(element).fontSize) * 0.75))`,
    );
  };
  expect(await smallest(clinic)).toBeGreaterThanOrEqual(10.5);
  expect(await smallest(patient)).toBeGreaterThanOrEqual(14);
});

/** A phone of today, CSS pixels. */
const HAND = { width: 390, height: 844 };

/** Words of charts that are shown and do not lie in sight as a whole, and the smallest letters of those that do, pixels. */
const WORDS_IN_SIGHT = `(() => {
  const shown = [...document.querySelectorAll(':is(.on-narrow, figure.half, figure.quarter) svg text')].filter((text) => text.getBoundingClientRect().width > 0);
  const boxes = shown.map((text) => [text.textContent, text.getBoundingClientRect()]);
  return {
    words: shown.map((text) => text.textContent),
    out: boxes.filter(([, { left, right }]) => left < 0 || right > innerWidth).map(([word]) => word),
    // What is opened on request may slide; what is shown may not.
    slides: [...document.querySelectorAll('.on-narrow, .scroll')].filter(
      (one) => one.scrollWidth > one.clientWidth + 1 && one.closest('details:not([open])') === null,
    ).map((one) => one.getAttribute('aria-label') ?? one.className),
    smallest: Math.min(...shown.map((text) => parseFloat(text.getAttribute('font-size')) * text.getScreenCTM().a)),
  };
})()`;
interface InSight {
  words: string[];
  out: string[];
  slides: string[];
  smallest: number;
}

check(
  'on a phone nothing of a visit needs sliding: evenings and nights, highs, the usual day, single days, then and now, tables; nor stands twice',
  async (browser) => {
    const [compared, own] = webPapers('four-visits', 'es').map(({ html }) => html) as [string, string];
    for (const [html, last, high] of [
      [visit, '10', 'High'],
      [patient, '10', 'High'],
      [compared, '2', 'Alta'],
      [own, '2', 'Alt'],
    ] as const) {
      const it = await opened(browser, html, HAND);
      const { words, out, slides, smallest } = (await it.page.evaluate(WORDS_IN_SIGHT)) as InSight;
      expect(words).toContain(last);
      expect(words.some((word) => word.startsWith(high))).toBe(true);
      expect({ out, slides }).toEqual({ out: [], slides: [] });
      expect(smallest).toBeGreaterThan(11);
      expect(await it.page.locator('.on-wide:visible').count()).toBe(0);
      expect(await violations(it)).toEqual([]);
      await it.page.setViewportSize(DESK);
      expect(await it.page.locator('.on-narrow:visible').count()).toBe(0);
      await it.page.emulateMedia({ media: 'print' });
      await it.page.setViewportSize(HAND);
      expect(await it.page.locator('.on-narrow:visible').count()).toBe(0);
    }
  },
);

/** Relative luminance (WCAG 2.2) of what is most and of what is furthest from it, in a picture of words: their contrast. */
const CONTRAST = `async (base64) => {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
  canvas.drawImage(image, 0, 0);
  const { data } = canvas.getImageData(0, 0, image.width, image.height);
  const part = (value) => (value <= 0.04045 * 255 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
  const seen = new Map();
  for (let i = 0; i < data.length; i += 4) {
    const light = 0.2126 * part(data[i]) + 0.7152 * part(data[i + 1]) + 0.0722 * part(data[i + 2]);
    seen.set(light, (seen.get(light) ?? 0) + 1);
  }
  const [ground] = [...seen].reduce((most, one) => (one[1] > most[1] ? one : most));
  return Math.max(...[...seen.keys()].map((light) => (Math.max(light, ground) + 0.05) / (Math.min(light, ground) + 0.05)));
}`;

check(
  'words on charts can be read where the system is dark, and where it chooses the colours: by pixels',
  async (browser) => {
    const counter = await (await browser.newContext()).newPage();
    const planted = patient.replaceAll('fill="#525252"', 'fill="#dddddd"');
    const least = async (
      html: string,
      media: { colorScheme?: 'dark'; forcedColors?: 'active' },
      form: 'on-wide' | 'on-narrow' = 'on-wide',
    ): Promise<number> => {
      const { page } = await opened(browser, html, form === 'on-wide' ? DESK : HAND);
      await page.emulateMedia(media);
      const words = page.locator(`.${form} svg text:is([fill="#525252"], [fill="#dddddd"])`);
      const found: number[] = [];
      for (const place of [0, 5]) {
        const picture = (await words.nth(place).screenshot()).toString('base64');
        found.push((await counter.evaluate(`(${CONTRAST})(${JSON.stringify(picture)})`)) as number);
      }
      await page.emulateMedia({ colorScheme: null, forcedColors: null });
      return Math.min(...found);
    };
    for (const media of [{ colorScheme: 'dark' }, { colorScheme: 'dark', forcedColors: 'active' }] as const)
      for (const html of [visit, patient])
        for (const form of ['on-wide', 'on-narrow'] as const)
          expect(await least(html, media, form), form).toBeGreaterThanOrEqual(4.5);
    for (const form of ['on-wide', 'on-narrow'] as const)
      expect(await least(planted, {}, form), 'the look finds pale words').toBeLessThan(3);
    await counter.context().close();
  },
);

check('links stand out from their ground by 7 to 1 (WCAG 2.2, 1.4.6)', async (browser) => {
  const { page } = await opened(browser, clinic, DESK);
  const colours = (await page.evaluate(
    `[...document.querySelectorAll('a, summary')].map((one) => getComputedStyle(one).color)`,
  )) as string[];
  expect(colours.length).toBeGreaterThan(3);
  const light = (colour: string): number => {
    const [r, g, b] = colour.match(/\d+/g)!.map((value) => {
      const part = Number(value) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  for (const colour of new Set(colours)) expect(1.05 / (light(colour) + 0.05), colour).toBeGreaterThanOrEqual(7);
});

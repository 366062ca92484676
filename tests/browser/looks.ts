import { expect } from 'vitest';
import { storyNames } from '../samples/stories.ts';
import { stressAnalysis } from '../support/stressPeople.ts';
import { inBrowser } from './browser.ts';
import { BUSIEST, DESK, NARROWEST, opened, overflow, PHONE, personPage, violations, webPapers } from './opened.ts';

/** The person's page of people whose data fill it, with its sides. */
export function lookAtStress(): void {
  const check = inBrowser();
  const full = { days: 28, lowEvenings: true, remarks: 200, letters: 40 };
  for (const language of ['en', 'es'])
    for (const [large, sides] of [
      [false, 2],
      [true, 4],
    ] as const)
      check(`a low every evening, 200 remarks, long names, ${language}: ${sides} sides`, async (browser) => {
        const { page } = await opened(browser, personPage(stressAnalysis(full), language, large), DESK);
        const pdf = await page.pdf({ preferCSSPageSize: true });
        expect(pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g)).toHaveLength(sides);
        await page.context().close();
      });
}

/** Looks at both papers of every story in a language. */
export function lookAtStories(language: string): void {
  const check = inBrowser();
  for (const story of storyNames) {
    for (const { voice, html } of webPapers(story, language)) {
      check(`${story} ${voice}: fits, can be read by all and keeps to itself`, async (browser) => {
        for (const viewport of [NARROWEST, PHONE, DESK]) {
          const it = await opened(browser, html, viewport);
          expect(await overflow(it), `overflow at ${viewport.width}`).toBe(0);
          if (viewport === PHONE || (viewport === DESK && story === BUSIEST)) expect(await violations(it)).toEqual([]);
          expect(it.messages).toEqual([]);
          await it.page.context().close();
        }
      });
      if (voice === 'clinic') continue;
      check(`${story}: the patient paper prints on the two sides of one sheet`, async (browser) => {
        const { page } = await opened(browser, html, DESK);
        const pdf = await page.pdf({ preferCSSPageSize: true });
        expect(pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g)).toHaveLength(2);
        await page.context().close();
      });
    }
  }
}

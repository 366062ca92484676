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
      });
}

/** Looks at both papers of every story in a language: the busiest opened at each width, the others brought to it. */
export function lookAtStories(language: string): void {
  const check = inBrowser();
  for (const story of storyNames) {
    for (const { voice, html } of webPapers(story, language)) {
      const sheet = voice === 'patient' ? ', and prints on the two sides of one sheet' : '';
      check(`${story} ${voice}: fits, can be read by all and keeps to itself${sheet}`, async (browser) => {
        const busiest = story === BUSIEST;
        let it = await opened(browser, html, NARROWEST);
        for (const viewport of [NARROWEST, PHONE, DESK]) {
          if (busiest && viewport !== NARROWEST) it = await opened(browser, html, viewport);
          else await it.page.setViewportSize(viewport);
          expect(await it.page.evaluate('innerWidth')).toBe(viewport.width);
          expect(await overflow(it), `overflow at ${viewport.width}`).toBe(0);
          if (viewport === PHONE || (viewport === DESK && busiest)) expect(await violations(it)).toEqual([]);
          expect(it.messages).toEqual([]);
        }
        if (voice === 'clinic') return;
        const pdf = await it.page.pdf({ preferCSSPageSize: true });
        expect(pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g)).toHaveLength(2);
      });
    }
  }
}

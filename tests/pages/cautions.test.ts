import { beforeAll, describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { pageText } from '../support/pageText.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';

/** A gap is drawn, so its caution stands on the same paper (common practice, no source). */
const GAP = { en: 'does not mean no low', es: 'No significa que no hubiera una baja' };
const LAG = { en: 'some minutes behind', es: 'unos minutos detrás de la sangre' };

const analyses = new Map<string, Analysis>();
beforeAll(async () => {
  for (const story of stories) analyses.set(story, await analysisOf(story));
});

describe.each(['en', 'es'] as const)('cautions in %s', (language) => {
  const text = (story: string, voice: 'clinic' | 'patient'): string =>
    pageText(compose(analyses.get(story)!, wordsOf(language), { voice, paper: 'a4' }));

  test.each(stories)('%s: a gap and the lag of the sensor are told to the clinic', (story) => {
    expect(text(story, 'clinic')).toMatch(new RegExp(GAP[language], 'i'));
    expect(text(story, 'clinic')).toContain(LAG[language]);
  });

  test('the person is told what a gap means where the nights or the usual day have one, and only there', () => {
    for (const story of stories) {
      const { nights, modalDay } = analyses.get(story)!.measures;
      const gap =
        (nights.ok && nights.value.slice(-14).some(({ state }) => state === 'unknown')) ||
        (modalDay.ok && modalDay.value.bins.some(({ p50 }) => p50 === null));
      expect(text(story, 'patient').includes(GAP[language]), story).toBe(gap);
    }
  });
});

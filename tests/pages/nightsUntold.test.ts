import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { CROWD } from '../support/crowd.ts';
import { pageText } from '../support/pageText.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

// Where no night was seen, "none began at night" would comfort falsely.
const COMFORT = { en: /none began at night/, es: /de noche ninguna/ };

test.each(['en', 'es'] as const)('thin data: no low is denied of nights that nobody saw (%s)', async (language) => {
  const words = wordsOf(language);
  const report = compose(await analysisOf('thin-data'), words, { voice: 'clinic', paper: 'a4' });
  const text = pageText(report).replaceAll('\u00a0', ' ');
  expect(text).toMatch({ en: /no night could be told/, es: /de las noches no se puede decir nada/ }[language]);
  expect(text).not.toMatch(COMFORT[language]);
});

test('whoever it is: nights without readings are none without lows, and where some are unknown their number stands', () => {
  const spoken = CROWD.filter(({ name }) => !/365|90/.test(name)).map(({ name, make }) => {
    const analysis = make();
    const { nights, lows } = analysis.measures;
    if (!nights.ok || !lows.ok || lows.value.list.length === 0 || lows.value.night > 0) return undefined;
    const text = pageText(compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' })).replaceAll('\u00a0', ' ');
    const [all, seen] = [nights.value.length, nights.value.filter(({ state }) => state !== 'unknown').length];
    if (seen === 0) return { name, right: text.includes('no night could be told') && !COMFORT.en.test(text) };
    const counted = `none began at night (${seen} of ${all} nights told)`;
    return { name, right: seen === all || text.includes(counted) };
  });
  const judged = spoken.filter((one) => one !== undefined);
  expect(judged.length).toBeGreaterThan(0);
  expect(judged.filter(({ right }) => !right)).toEqual([]);
});

import { describe, expect, test } from 'vitest';
import { everyMessage } from '../support/everyMessage.ts';
import { wordsOf } from '../support/story.ts';

/**
 * What a region's words change of those of their language, and nothing else: spelling, names of medicines and of a
 * leaflet, the decimal sign (common practice, no source). A text mended in the one and forgotten in the other differs
 * in more than that.
 */
const REGIONS: Record<string, { base: string; spelled: [RegExp, string][] }> = {
  'en-GB': {
    base: 'en',
    spelled: [
      [/\bcolour/g, 'color'],
      [/\b([Tt])owards\b/g, '$1oward'],
      [/([Gg])lycaemi/g, '$1lycemi'],
      [/paracetamol \(acetaminophen\)/g, 'acetaminophen (paracetamol)'],
    ],
  },
  'es-ES': {
    base: 'es',
    spelled: [
      [/(?<=\d),(?=\d)/g, '.'],
      [/el paracetamol \(acetaminofén\)/g, 'el acetaminofén (paracetamol)'],
      [/su prospecto/g, 'su folleto'],
    ],
  },
};

const textsOf = (language: string): Map<string, string> =>
  new Map(everyMessage(wordsOf(language) as object).filter(([key]) => key !== 'locale'));

describe.each(Object.entries(REGIONS))('words of %s', (region, { base, spelled }) => {
  const [own, whole] = [textsOf(region), textsOf(base)];

  test('differ from those of their language in the spelling of the region alone', () => {
    for (const [key, text] of own) {
      expect(text, key).not.toBe(whole.get(key));
      const again = spelled.reduce((said, [word, usual]) => said.replaceAll(word, usual), text);
      expect(again, key).toBe(whole.get(key));
    }
  });
});

test('no text the British read in a paper keeps the American spelling', () => {
  const british = new Map([...textsOf('en'), ...textsOf('en-GB')]);
  // The command speaks American English everywhere; a select arm is a name in the code.
  const left = [...british].filter(
    ([key, text]) => !/^(?:cli|clinic)\./.test(key) && /\bcolor|\btoward\b|glycemi|acetaminophen \(/i.test(text),
  );
  expect(left.map(([key]) => key)).toEqual([]);
});

test('the decimal sign of a region stays out of names that hold points: sources by their doi, addresses', () => {
  const pointed = Object.keys(REGIONS).flatMap((region) =>
    [...textsOf(region)].flatMap(([key, text]) =>
      [...text.matchAll(/(?:\bdoi |https?:\/\/|\b10[.,]\d{4,}\/)\S+/g)].map(([name]) => [key, name] as const),
    ),
  );
  expect(pointed.length).toBeGreaterThan(0);
  expect(pointed.filter(([, name]) => /\d,\d/.test(name))).toEqual([]);
});

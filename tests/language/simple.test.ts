import { readFileSync } from 'node:fs';
import { IntlMessageFormat } from 'intl-messageformat';
import { expect, test } from 'vitest';
import { messageParams, openMessages } from '../../src/language/messages.ts';

/** The library is the outside value: where our short way fills a message, it must fill it alike. */
const plain = (text: string): string =>
  text
    .replace(/[\s\u00a0]+/gu, ' ')
    .replace(/(?<=\p{L}\.)\.(?= |$)/gu, '')
    .trim();

test.each(['en', 'es'])('%s: every message of text and names alone is filled as the library fills it', (language) => {
  const words = JSON.parse(readFileSync(new URL(`../../templates/words/${language}.json`, import.meta.url), 'utf8'));
  const messages = openMessages(words, language, language);
  let compared = 0;
  const visit = (at: unknown, key: string): void => {
    if (typeof at === 'object' && at !== null) {
      for (const [name, value] of Object.entries(at)) visit(value, key ? `${key}.${name}` : name);
    } else if (typeof at === 'string' && !at.includes(', plural,') && !at.includes(', select,')) {
      const values = Object.fromEntries([...messageParams(at, language)].map((name) => [name, `<${name} of it's>`]));
      const filled = messages.fill(key, (name) => ({ text: values[name]! }));
      const library = new IntlMessageFormat(at, language, undefined, { ignoreTag: true }).format(values) as string;
      expect(plain(filled), key).toBe(plain(library));
      compared++;
    }
  };
  visit(words, '');
  expect(compared).toBeGreaterThan(500);
});

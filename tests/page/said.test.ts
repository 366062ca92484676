import { describe, expect, test } from 'vitest';
import { lacking } from '../../src/language/index.ts';
import { withoutOptions } from '../../src/page/worker/said.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { wordsOf } from '../support/story.ts';

const OPTION = '--layout \'{"unit":"mmol/L"}\'';

describe.each(['en', 'es'])('what is said of files on a page, %s', (language) => {
  const words = wordsOf(language) as { issues: object; screen: object; cli: { told: Record<string, unknown> } };

  test('names no option of the command, and still says what is wrong', () => {
    for (const [key, text] of everyMessage(words.issues)) {
      const said = withoutOptions(text.replaceAll('{option}', OPTION));
      expect(said, key).not.toMatch(/(^|\s)--[a-z]/);
      expect(said.length, key).toBeGreaterThan(10);
    }
  });

  test('is whole where the command alone has words for it', () => {
    const english = wordsOf('en') as typeof words;
    for (const part of ['by', 'columns', 'period']) {
      const { head: _, ...asked } = english.cli.told[part] as Record<string, unknown>;
      expect(lacking(words.cli.told[part], asked), part).toEqual([]);
    }
    expect(words.cli.told).toMatchObject({ rows: expect.any(String), evidence: expect.any(String) });
  });

  test('needs no grammar in the words that the page fills in itself', () => {
    for (const [key, text] of everyMessage(words.screen))
      expect(text.replace(/\{\w+\}/g, ''), key).not.toMatch(/[{}#]|''/);
  });
});

test('a sentence keeps all that names no option', () => {
  expect(withoutOptions('a.csv is odd. Say which, with --unit mg/dL or --unit mmol/L.')).toBe('a.csv is odd.');
  expect(withoutOptions('Lines 3–4 are odd – e.g. x--y. ¿Es así? Diga cuál con --zone.')).toBe(
    'Lines 3–4 are odd – e.g. x--y. ¿Es así?',
  );
});

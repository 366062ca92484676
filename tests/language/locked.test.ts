import { describe, expect, test } from 'vitest';
import { seal, speakerOf } from '../../src/language/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { wordsOf } from '../support/story.ts';

interface Lock {
  review: string;
  texts: Record<string, string>;
}
const locks = wordsOf('locked') as Record<string, Lock>;
const STATES = ['needs clinician review', 'reviewed by a clinician'];

/**
 * Safety texts, word for word. A text that changes here has to be read again by a clinician who speaks the language:
 * set `review` back, and the seal of the text to what this test expects.
 */
describe.each(Object.entries(locks))('%s', (name, { review, texts }) => {
  const words = new Map(everyMessage(wordsOf(name) as object));

  test('every locked text is the one that was locked', () => {
    const now = Object.fromEntries(Object.keys(texts).map((key) => [key, seal(words.get(key) ?? '')]));
    expect(now).toEqual(texts);
  });

  test('every caution of this file is locked', () => {
    const cautions = [...words.keys()].filter((key) => key.startsWith('cautions.'));
    expect(cautions.filter((key) => !(key in texts))).toEqual([]);
  });

  test('says whether a clinician has read it', () => {
    expect(STATES).toContain(review);
  });
});

test('the same texts are locked in each language', () => {
  const papers = (name: string) =>
    Object.keys(locks[name]!.texts).filter((key) => !/^cli\.|^pages\.worklist/.test(key));
  expect(papers('es')).toEqual(papers('en'));
});

test('unless it is known that a clinician has read them, the texts count as not reviewed', () => {
  const say = (review?: string) =>
    speakerOf({ ...(wordsOf() as object), review }, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
  expect(say().reviewed).toBe(false);
  expect(say('not reviewed').reviewed).toBe(false);
  expect(say('reviewed').reviewed).toBe(true);
});

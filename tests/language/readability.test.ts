import { describe, expect, test } from 'vitest';
import { easeOf, grade, gradeOf, sentences, syllables, words } from '../support/readability.ts';

/** An encyclopaedia's worked example: 13 words, 24 syllables as published, 26 as a dictionary divides them. */
const PLATYPUS = 'The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.';
const CAT = 'The cat sat on the mat.';

describe('the formula on given counts', () => {
  test.each([
    ['cat', 1, 6, 6, -1.45, 116.1],
    ['platypus', 1, 13, 24, 11.3, 37.5],
  ])('%s', (_, sentenceCount, wordCount, syllableCount, expectedGrade, expectedEase) => {
    expect(gradeOf(sentenceCount, wordCount, syllableCount)).toBeCloseTo(expectedGrade, 1);
    expect(easeOf(sentenceCount, wordCount, syllableCount)).toBeCloseTo(expectedEase, 1);
  });
});

test.each([
  [CAT, 1, 6, 6],
  [PLATYPUS, 1, 13, 26],
  ['Your glucose was 5.4 mmol/L at 2:40 AM. Why?', 2, 9, 10],
])('counts of "%s"', (text, sentenceCount, wordCount, syllableCount) => {
  expect(sentences(text)).toHaveLength(sentenceCount);
  expect(words(text)).toHaveLength(wordCount);
  expect(words(text).reduce((sum, word) => sum + syllables(word), 0)).toBe(syllableCount);
});

test('the counter and the formula together', () => {
  expect(grade(CAT)).toBeCloseTo(-1.45, 2);
  expect(grade(PLATYPUS)).toBeCloseTo(13.08, 1);
});

/** Syllables as a dictionary divides them (from memory). */
test.each(
  Object.entries({
    glucose: 2,
    sensor: 2,
    readings: 2,
    lowest: 2,
    lasted: 2,
    nights: 1,
    began: 2,
    between: 2,
    noticed: 2,
    felt: 1,
    usual: 2,
    midnight: 2,
    minutes: 2,
    range: 1,
    ranges: 2,
    times: 1,
    middle: 2,
    differ: 2,
    unknown: 2,
    nothing: 2,
    going: 2,
    together: 3,
    breakfast: 2,
    stretches: 2,
    question: 2,
    consensus: 3,
    published: 2,
    guidance: 2,
    attention: 3,
    finger: 2,
    'finger-stick': 3,
    safe: 1,
    treated: 2,
    stable: 2,
    looked: 1,
    added: 2,
    goes: 1,
    beyond: 2,
    illness: 2,
    ketones: 2,
    delivery: 4,
    sooner: 2,
    wear: 1,
    days: 1,
  }),
)('%s has %i syllables', (word, expected) => {
  expect(syllables(word)).toBe(expected);
});

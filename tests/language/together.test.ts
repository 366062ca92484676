import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isolated, speakerOf } from '../../src/language/index.ts';
import { openMessages } from '../../src/language/messages.ts';
import { adult } from '../../src/targets/adult.ts';
import { wordsOf } from '../support/story.ts';

const said = (text: string): string =>
  openMessages({ it: text }, 'en', 'en').fill('it', (name) => ({ text: name === 'unit' ? 'mg/dL' : '7' }));

describe('a number and its unit stay together', () => {
  test.each([
    ['70 % of the day', '70\u00a0% of the day'],
    ['40 to 400 mg/dL (2.2 to 22.2 mmol/L)', '40 to 400\u00a0mg/dL (2.2 to 22.2\u00a0mmol/L)'],
    ['under 10 g, or {n} g', 'under 10\u00a0g, or 7\u00a0g'],
    ['{n} {unit}, {n} IU, {n} min, {n} h', '7\u00a0mg/dL, 7\u00a0IU, 7\u00a0min, 7\u00a0h'],
    ['{n, plural, one {{n} min} other {{n} min}}', '7\u00a0min'],
    // Words that only begin like a unit, and numbers without one, break where they like.
    ['7 great hours, {n} hours, {n} minutes', '7 great hours, 7 hours, 7 minutes'],
    ['{n} of 14 nights', '7 of 14 nights'],
  ])('%s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });

  test('in every text of every paper', () => {
    const speaker = speakerOf(wordsOf(), { unit: 'mg/dL', voice: 'clinic', targets: adult });
    const texts = JSON.stringify(wordsOf()).match(/"[^"\\]*\d (?:%|mg\/dL|mmol\/L)(?!\w)[^"\\]*"/g) ?? [];
    expect(texts.length).toBeGreaterThan(3);
    expect(speaker.say('pages.method.rule.axis')).not.toMatch(/\d (?:%|mg\/dL|mmol\/L)/);
  });
});

describe('a name that runs from right to left keeps to itself', () => {
  test.each([
    ['Marit', 'Marit'],
    ['山本', '山本'],
    ['מרית', '\u2068מרית\u2069'],
    ['Dr. محمد', '\u2068Dr. محمد\u2069'],
  ])('%s', (name, expected) => {
    expect(isolated(name)).toBe(expected);
    const speaker = speakerOf(wordsOf(), { unit: 'mg/dL', voice: 'clinic', targets: adult });
    expect(speaker.value({ q: 'word', value: name })).toBe(expected);
  });

  test('and nothing of it is lost', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => isolated(text).includes(text)));
  });
});

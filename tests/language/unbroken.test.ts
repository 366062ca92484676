import { describe, expect, test } from 'vitest';
import { speakerOf } from '../../src/language/index.ts';
import type { Quantity } from '../../src/model/quantity.ts';
import { targetSets } from '../../src/targets/index.ts';
import { wordsOf } from '../support/story.ts';

const QUANTITIES: [Quantity, string][] = [
  [{ q: 'often', k: 3, n: 14, of: 'days' }, 'en'],
  [{ q: 'often', k: 5, n: 7, of: 'nights' }, 'es'],
  [{ q: 'minutes', value: 53 }, 'en'],
  [{ q: 'minutes', value: 153 }, 'es'],
  [{ q: 'clock', value: 875 }, 'en'],
  [{ q: 'share', value: 0.42 }, 'en'],
  [{ q: 'glucose', value: 61 as never, limit: -1 }, 'es'],
];

describe.each(['clinic', 'patient'] as const)('to a reader of the %s paper', (voice) => {
  test.each(QUANTITIES)('%j in %s: a number parts from nothing that belongs to it', (quantity, language) => {
    const options = { unit: 'mg/dL', voice, targets: targetSets.adult } as const;
    expect(speakerOf(wordsOf(language), options).value(quantity)).not.toMatch(
      /\d (?:of|de) \d|h \d|\d (?:min|h|%|mg|hour|hora|AM|PM|a\.)/,
    );
  });

  test('nor in a sentence', () => {
    const speaker = speakerOf(wordsOf(), { unit: 'mg/dL', voice, targets: targetSets.adult });
    const count = (value: number) => ({ q: 'count' as const, value });
    const text = speaker.say('findings.few-notes.patient.what', { noted: count(8), days: count(14) });
    expect(text).toContain('8\u00a0of\u00a014 days');
  });
});

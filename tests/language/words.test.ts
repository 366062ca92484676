import { describe, expect, test } from 'vitest';
import { english } from '../support/english.ts';
import { everyMessage, readings } from '../support/everyMessage.ts';
import { grade, sentences, words } from '../support/readability.ts';
import { crossesFence, faults } from '../support/wordLists.ts';

const messages = everyMessage(english);
const isPatient = (key: string): boolean => /patient|^findings\.[^.]+\.topic$/i.test(key);

/** Locked safety strings are exempt by id; the command line speaks about the program, not about a person. */
const EXEMPT = /^(cautions\.|cli\.)/;

/** What is wrong, with the key where it stands; one list for all messages, so that a run stays readable. */
const wrong = (keys: (key: string) => boolean, look: (key: string, reading: string) => string[]): string[] =>
  messages
    .filter(([key]) => keys(key))
    .flatMap(([key, text]) => readings(text).flatMap((each) => look(key, each).map((fault) => `${key}: ${fault}`)));

test('every text is a well-formed message whose words judge nobody, claim no cause and advise no dose', () => {
  const found = wrong(
    (key) => !EXEMPT.test(key),
    (key, reading) => {
      const all = faults(reading, isPatient(key) ? 'patient' : 'clinic').map((fault) => `${fault} in "${reading}"`);
      // What is wrong with a file may well have a cause that we know.
      return key.startsWith('issues.') ? all.filter((fault) => !fault.startsWith('cause')) : all;
    },
  );
  expect(found).toEqual([]);
});

/** Voice P: 20 words a sentence at most. Elsewhere our own limits: lists of counts and definitions run longer. */
test('sentences are short', () => {
  const most = (key: string): number => {
    if (isPatient(key) || key.startsWith('findings.')) return 20;
    return key.endsWith('.definition') ? 40 : 30;
  };
  const found = wrong(
    (key) => !key.startsWith('cli.'),
    (key, reading) => sentences(reading).filter((sentence) => words(sentence).length > most(key)),
  );
  expect(found).toEqual([]);
});

const document = (pick: (key: string) => boolean): string =>
  messages
    .filter(([key]) => pick(key))
    .map(([, text]) => readings(text)[0] ?? '')
    .join('\n');

describe('reading level', () => {
  test('all of voice P together reads at grade 5 or below', () => {
    expect(grade(document((key) => isPatient(key) || /^cautions\.C\d/.test(key)))).toBeLessThanOrEqual(5);
  });

  test('all running text of voice C together reads at grade 9 or below', () => {
    expect(
      grade(document((key) => /^findings\..*\.clinic|^pages\.(?!patient)|^cautions\.clinic/.test(key))),
    ).toBeLessThanOrEqual(9);
  });

  test('a text of voice P of 30 words or more, read alone, is at grade 7 or below', () => {
    const found = wrong(
      (key) => isPatient(key) || /^cautions\.C\d/.test(key),
      (_, reading) => (words(reading).length >= 30 && grade(reading) > 7 ? [reading] : []),
    );
    expect(found).toEqual([]);
  });
});

describe('the fence', () => {
  test.each(['Lower your bedtime insulin by 2 units', 'Consider a dose increase', 'Add a snack and cut the dose'])(
    'stops "%s"',
    (text) => {
      expect(crossesFence(text)).toBe(true);
    },
  );

  test.each(['Ask your team what could help at night', 'Insulin was noted at 22:10 on 4 of 5 of these nights'])(
    'lets "%s" pass',
    (text) => {
      expect(crossesFence(text)).toBe(false);
    },
  );
});

test.each([
  ['You have poor control.', 'clinic'],
  ['Glucose rose because of rice.', 'clinic'],
  ['The patient was non-compliant.', 'clinic'],
  ['Your CV was high.', 'patient'],
  ['No lows at night.', 'clinic'],
  ['Lows improved.', 'clinic'],
] as const)('the lists find what is wrong with "%s"', (text, voice) => {
  expect(faults(text, voice)).not.toEqual([]);
});

/** The locked safety strings, word for word. A change here needs a fresh review of each language. */
test('cautions are the reviewed ones', () => {
  const ids = Object.keys(english.cautions);
  for (let i = 1; i <= 13; i++) expect(ids).toContain(`C${i}`);
  expect(english.cautions.C2).toBe(
    'Do not change your insulin or other medicine because of this report alone. Talk with your care team first.',
  );
  expect(english.cautions.C3).toBe(
    'Feel low now, or see a low number now? Treat it now, the way you were taught. This paper only shows past days.',
  );
  expect(english.cautions.C11).toBe('A gap means no reading. It does not mean no low.');
  for (const said of [
    'real time',
    'dosing',
    'diagnosis',
    'alarms',
    'regulator',
    'interstitial',
    'clinician interprets',
  ]) {
    expect(english.cautions.clinicMethod).toContain(said);
  }
});

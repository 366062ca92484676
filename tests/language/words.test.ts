import { describe, expect, test } from 'vitest';
import { findings } from '../../src/findings/index.ts';
import { english } from '../support/english.ts';
import { everyMessage, readings } from '../support/everyMessage.ts';
import { grade, sentences, words } from '../support/readability.ts';
import { crossesFence, faults } from '../support/wordLists.ts';

const messages = everyMessage(english);
const isPatient = (key: string): boolean => /patient|^findings\.[^.]+\.topic$/i.test(key);

/** Locked safety strings are exempt by id; the command line speaks about the program, not about a person. */
const EXEMPT = /^(cautions\.|cli\.)/;

test.each(messages)('%s is a message whose words judge nobody, claim no cause and advise no dose', (key, text) => {
  const all = readings(text);
  if (EXEMPT.test(key)) return;
  for (const reading of all) {
    const found = faults(reading, isPatient(key) ? 'patient' : 'clinic');
    // What is wrong with a file may well have a cause that we know.
    const counted = key.startsWith('issues.') ? found.filter((fault) => !fault.startsWith('cause')) : found;
    expect(counted, reading).toEqual([]);
  }
});

/** Voice P: 20 words a sentence at most. Elsewhere our own limit: lists of counts and definitions run longer. */
test.each(messages.filter(([key]) => !key.startsWith('cli.')))('%s has short sentences', (key, text) => {
  const most = isPatient(key) || key.startsWith('findings.') ? 20 : 30;
  for (const reading of readings(text)) {
    for (const sentence of sentences(reading)) expect(words(sentence).length, sentence).toBeLessThanOrEqual(most);
  }
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

  test.each(messages.filter(([key]) => isPatient(key) || /^cautions\.C\d/.test(key)))('%s, read alone', (_, text) => {
    for (const reading of readings(text)) {
      if (words(reading).length >= 30) expect(grade(reading), reading).toBeLessThanOrEqual(7);
    }
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

test('each finding has its words, and the words no finding without one', () => {
  const parts = ['name', 'topic', 'untold', 'clinic.what', 'clinic.why', 'clinic.ask', 'patient.what', 'patient.ask'];
  const keys = new Set(messages.map(([key]) => key));
  for (const { id } of findings) {
    for (const part of parts) expect(keys, `findings.${id}.${part}`).toContain(`findings.${id}.${part}`);
  }
  const spoken = Object.keys(english.findings).filter((id) => id !== 'rules');
  expect(spoken.sort()).toEqual(findings.map(({ id }) => id).sort());
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

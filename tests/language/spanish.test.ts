import { describe, expect, test } from 'vitest';
import { everyMessage, readings } from '../support/everyMessage.ts';
import {
  contar,
  cruzaLaCerca,
  faltas,
  fernandezHuerta,
  frases,
  inflesz,
  palabras,
  silabas,
} from '../support/spanish.ts';
import { wordsOf } from '../support/story.ts';

const messages = everyMessage(wordsOf('es') as object);
const isPatient = (key: string): boolean => /patient|^findings\.[^.]+\.topic$/i.test(key);
const isCaution = (key: string): boolean => /^cautions\.C\d/.test(key);

const wrong = (keys: (key: string) => boolean, look: (key: string, reading: string) => string[]): string[] =>
  messages
    .filter(([key]) => keys(key))
    .flatMap(([key, text]) => readings(text).flatMap((each) => look(key, each).map((fault) => `${key}: ${fault}`)));

test('no text judges a person, claims a cause or advises a dose', () => {
  // Locked safety texts are exempt by id; what is wrong with a file may have a cause that we know.
  const found = wrong(
    (key) => !/^(cautions|issues)\./.test(key),
    (key, reading) => faltas(reading, isPatient(key) ? 'patient' : 'clinic').map((fault) => `${fault} in "${reading}"`),
  );
  expect(found).toEqual([]);
});

/** Voice P as in English, 20 words; elsewhere Spanish is given a quarter more (ours). */
test('sentences are short', () => {
  const most = (key: string): number => {
    if (isPatient(key)) return 20;
    if (key.startsWith('findings.')) return 28;
    return key.endsWith('.definition') ? 48 : 38;
  };
  const found = wrong(
    () => true,
    (key, reading) => frases(reading).filter((one) => palabras(one).length > most(key)),
  );
  expect(found).toEqual([]);
});

test('every question and exclamation opens as well as closes', () => {
  const found = wrong(
    () => true,
    (_, reading) =>
      ['¿?', '¡!'].every(([open, close]) => reading.split(open!).length === reading.split(close!).length)
        ? []
        : [reading],
  );
  expect(found).toEqual([]);
});

const document = (pick: (key: string) => boolean): string =>
  messages
    .filter(([key]) => pick(key))
    .map(([, text]) => readings(text)[0] ?? '')
    .join('\n');

describe('ease of reading, on the INFLESZ scale', () => {
  test('all of voice P together is very easy', () => {
    expect(inflesz(contar(document((key) => isPatient(key) || isCaution(key))))).toBeGreaterThanOrEqual(80);
  });

  test('all running text of voice C together is rather easy', () => {
    const clinic = document((key) => /^findings\..*\.clinic|^pages\.(?!patient)|^cautions\.clinic/.test(key));
    expect(inflesz(contar(clinic))).toBeGreaterThanOrEqual(65);
  });

  test('a text of voice P of 30 words or more, read alone, is rather easy', () => {
    const found = wrong(
      (key) => isPatient(key) || isCaution(key),
      (_, reading) => (palabras(reading).length >= 30 && inflesz(contar(reading)) < 65 ? [reading] : []),
    );
    expect(found).toEqual([]);
  });
});

describe('the measure', () => {
  /** Syllables by the spelling rules of the Real Academia (from memory). */
  test.each(
    Object.entries({
      glucosa: 3,
      lecturas: 3,
      día: 2,
      noche: 2,
      período: 4,
      guía: 2,
      aún: 2,
      ahora: 3,
      ahí: 2,
      construir: 2,
      ciudad: 2,
      siguiente: 3,
      pregunta: 3,
      queso: 2,
      leer: 2,
      oír: 2,
      muy: 1,
      hay: 1,
      yo: 1,
      medianoche: 4,
      farmacia: 3,
      convulsión: 3,
      veintiún: 2,
      'mg/dL': 1,
      '2:40': 1,
    }),
  )('%s has %i syllables', (word, expected) => {
    expect(silabas(word)).toBe(expected);
  });

  test('the formulas on given counts (both from memory)', () => {
    const counts = { sentences: 1, words: 10, syllables: 20 };
    expect(fernandezHuerta(counts)).toBeCloseTo(206.84 - 120 - 10.2, 9);
    expect(inflesz(counts)).toBeCloseTo(206.835 - 124.6 - 10, 9);
  });

  test('an hour in the afternoon ends no sentence', () => {
    expect(frases('Empezó a las 2 p.m. y duró 1 h. La más larga, a las 3 a. m. del lunes.')).toHaveLength(2);
    expect(frases('Empezó a las 2 p.m. Duró 1 h.')).toHaveLength(2);
  });
});

describe('the fence', () => {
  test.each([
    'Baje su insulina de la noche 2 unidades',
    'Considere aumentar la dosis',
    'Suspenda la medicina si hay bajas',
    'Tome media tableta menos',
  ])('stops "%s"', (text) => {
    expect(cruzaLaCerca(text)).toBe(true);
  });

  test.each([
    'Pregunte a su equipo qué podría ayudar en la noche',
    'La insulina se anotó a las 22:10 en 4 de 5 de estas noches',
    '¿Qué pasaba cuando anoté insulina y nada de comida?',
  ])('lets "%s" pass', (text) => {
    expect(cruzaLaCerca(text)).toBe(false);
  });
});

test.each([
  ['Tiene mal control.', 'clinic'],
  ['La glucosa subió debido al arroz.', 'clinic'],
  ['El paciente no cumplió: incumplimiento.', 'clinic'],
  ['Su CV fue alto.', 'patient'],
  ['Las bajas mejoraron.', 'clinic'],
  ['Estuviste en rango.', 'patient'],
] as const)('the lists find what is wrong with "%s"', (text, voice) => {
  expect(faltas(text, voice)).not.toEqual([]);
});

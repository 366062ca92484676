import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { speakerOf } from '../../src/language/index.ts';
import { sourceText } from '../../src/pages/sourceText.ts';
import { evidenceText, shownText, valueText } from '../../src/pages/understoodTexts.ts';
import { targetSets } from '../../src/targets/index.ts';
import { home, wordsOf } from '../support/story.ts';

const speaker = speakerOf(wordsOf('es'), { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
const readers = join(home, 'src/readers');
const code = readdirSync(readers, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(readers, name), 'utf8'))
  .join('\n');
const valueSaid = (id: string, value: string): string => valueText(speaker, { id, value, by: 'file' });
const evidenceOf = (id: string, evidence: string): string =>
  evidenceText(speaker, { id, value: '', by: 'file', evidence });

describe('how a file was understood, in the language of the paper', () => {
  test.each([
    ['header', 'line 1381', 'línea 1381'],
    ['header', 'none', 'ninguna fila'],
    ['delimiter', 'tab', 'tabulación'],
    ['delimiter', ';', ';'],
    ['clock', 'date and time in one column', 'fecha y hora en una columna'],
    ['clock', 'dates without a time', 'fechas sin hora'],
    ['date-order', 'day-first', 'primero el día'],
    ['half-of-day', 'order of rows', 'el orden de las filas'],
    ['glucose-kind', 'finger stick', 'punción del dedo'],
    [
      'columns',
      'When = time, a = b = note, Carbs = constructor',
      'When = fecha y hora, a = b = nota, Carbs = constructor',
    ],
    ['zone', 'Europe/Madrid', 'Europe/Madrid'],
    // A name that looks like one of our phrases stays a name where only names stand.
    ['zone', 'none', 'none'],
  ])('value of %s: %s', (id, value, expected) => {
    expect(valueSaid(id, value)).toBe(expected);
  });

  test.each([
    ['encoding', 'valid UTF-8', 'UTF-8 válido'],
    ['encoding', 'byte-order mark', 'marca de orden de bytes'],
    ['encoding', 'zero bytes at every other place', 'un byte cero en uno de cada dos lugares'],
    ['delimiter', '7 fields in 13503 of 13510 rows', '7 campos en 13,503 de 13,510 filas'],
    ['header', 'columns told by what is in them', 'columnas reconocidas por su contenido'],
    ['clock', '00:00 in every row', '00:00 en todas las filas'],
    ['date-order', 'same date either way', 'la misma fecha de las dos maneras'],
    ['date-order', 'other order lies in the future', 'el otro orden cae en el futuro'],
    ['date-order', '13 of 14 day steps', '13 de 14 pasos de un día'],
    ['date-order', '4/13/2026', '4/13/2026'],
    ['serial-dates', 'the other count lies in the future', 'la otra cuenta cae en el futuro'],
    ['decimal-mark', '6656 of 6656 cells', '6,656 de 6,656 celdas'],
    ['unit', 'unit written in each row', 'la unidad escrita en cada fila'],
    ['unit', 'unit text', 'el texto de la unidad'],
    ['unit', '288 values from 3.4 to 14.2, with decimals', '288 valores de 3.4 a 14.2, con decimales'],
    ['unit', '288 values from 55 to 240, whole numbers', '288 valores de 55 a 240, enteros'],
    ['unit', 'Glucose (mg/dL)', 'Glucose (mg/dL)'],
    ['glucose-kind', '3 min between values', '3 min entre valores'],
    ['values', 'Sensor 2: 40 of 41', 'Sensor 2: 40 de 41'],
  ])('evidence for %s: %s', (id, evidence, expected) => {
    expect(evidenceOf(id, evidence).replaceAll('\u00a0', ' ')).toBe(expected);
  });

  test('the phrases are those that the readers write', () => {
    const phrases = [
      ...['date and time in one column', 'date and time in two columns', 'dates without a time', 'order of rows'],
      ...['finger stick', 'byte-order mark', 'valid UTF-8', 'zero bytes at every other place'],
      ...['columns told by what is in them', '00:00 in every row', 'same date either way'],
      ...['other order lies in the future', 'the other count lies in the future', 'unit written in each row'],
      ...['unit text', 'with decimals', 'whole numbers', 'min between values', 'day steps', ' cells`', ' rows`'],
    ];
    expect(phrases.filter((phrase) => !code.includes(phrase))).toEqual([]);
  });

  test('what an issue shows', () => {
    expect(shownText(speaker, 'sparse-glucose', '240 min between values').replaceAll('\u00a0', ' ')).toBe(
      '240 min entre valores',
    );
    expect(shownText(speaker, 'date-order-contradicts-file', 'month-first')).toBe('primero el mes');
    expect(shownText(speaker, 'zones-in-file', 'Europe/Rome (line 2), Asia/Tokyo')).toBe(
      'Europe/Rome (línea 2), Asia/Tokyo',
    );
    expect(shownText(speaker, 'no-rows', undefined)).toBe('');
  });
});

test('a source keeps its citations, and says in the language of the paper what it says of them', () => {
  const source = '{time-to-peak}: Daenen 2010, Diabetes Metab 36:165-169, table 4; Parkes 2000 ({borders-from-memory})';
  expect(sourceText(speaker, source)).toBe(
    'Tiempo hasta el máximo: Daenen 2010, Diabetes Metab 36:165-169, tabla 4; Parkes 2000 (bordes, de memoria)',
  );
});

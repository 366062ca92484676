import { describe, expect, test } from 'vitest';
import { speakerOf } from '../../src/language/index.ts';
import type { Choice, ChoiceId } from '../../src/model/choices.ts';
import type { Detail, Shown } from '../../src/model/detail.ts';
import { sourceText } from '../../src/pages/sourceText.ts';
import { evidenceText, valueText } from '../../src/pages/understoodTexts.ts';
import { ROLES } from '../../src/schemas/layout.ts';
import { targetSets } from '../../src/targets/index.ts';
import { wordsOf } from '../support/story.ts';

const speaker = speakerOf(wordsOf('es'), { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
const choice = (id: ChoiceId, value: unknown, evidence?: Detail) =>
  ({ id, value, by: 'file', ...(evidence ? { evidence } : {}) }) as Choice;
const shownIn = (value: Shown): string => speaker.value({ q: 'shown', value }).replaceAll('\u00a0', ' ');

describe('how a file was understood, in the language of the paper', () => {
  test.each<[ChoiceId, unknown, string]>([
    ['header', 1381, 'línea 1381'],
    ['header', 'none', 'ninguna fila'],
    ['delimiter', 'tab', 'tabulación'],
    ['delimiter', ';', ';'],
    ['clock', 'one-column', 'fecha y hora en una columna'],
    ['clock', 'dates-only', 'fechas sin hora'],
    ['date-order', 'day-first', 'primero el día'],
    ['half-of-day', 'row-order', 'el orden de las filas'],
    ['glucose-kind', 'finger-stick', 'punción del dedo'],
    ['unit', 'both', 'mg/dL y mmol/L'],
    ['serial-dates', 1904, '1904'],
    [
      'columns',
      [
        { name: 'When', role: 'time' },
        { name: 'a = b', role: 'note' },
      ],
      'When = fecha y hora, a = b = nota',
    ],
    ['zone', 'Europe/Madrid', 'Europe/Madrid'],
    // A name that looks like one of our words stays a name where only names stand.
    ['zone', 'none', 'none'],
    ['values', 'tab', 'tab'],
  ])('value of %s: %s', (id, value, expected) => {
    expect(valueText(speaker, choice(id, value))).toBe(expected);
  });

  test.each<[Detail, string]>([
    [{ is: 'valid-utf-8' }, 'UTF-8 válido'],
    [{ is: 'zero-bytes' }, 'un byte cero en uno de cada dos lugares'],
    [{ is: 'fields', fields: 7, rows: 13503, of: 13510 }, '7 campos en 13,503 de 13,510 filas'],
    [{ is: 'by-content' }, 'columnas reconocidas por su contenido'],
    [{ is: 'every-midnight' }, '00:00 en todas las filas'],
    [{ is: 'day-steps', steps: 13, of: 14 }, '13 de 14 pasos de un día'],
    [{ is: 'named', name: '4/13/2026' }, '4/13/2026'],
    [{ is: 'named', name: 'valid UTF-8' }, 'valid UTF-8'],
    [{ is: 'cells', cells: 6656, of: 6656 }, '6,656 de 6,656 celdas'],
    [{ is: 'values-with-decimals', count: 288, low: 3.4, high: 14.2 }, '288 valores de 3.4 a 14.2, con decimales'],
    [{ is: 'minutes-between', minutes: 3 }, '3 min entre valores'],
    [{ is: 'same-of', name: 'Sensor 2', same: 40, of: 41 }, 'Sensor 2: 40 de 41'],
  ])('evidence %j', (evidence, expected) => {
    expect(evidenceText(speaker, choice('unit', 'mg/dL', evidence)).replaceAll('\u00a0', ' ')).toBe(expected);
  });

  test('what an issue shows', () => {
    expect(shownIn({ is: 'picture' })).toBe('una imagen');
    expect(shownIn({ is: 'range', low: 10, high: 1000, unit: 'mg/dL' })).toBe('10-1,000 mg/dL');
    expect(
      shownIn([
        { is: 'at-line', text: 'Europe/Rome', line: 2 },
        { is: 'named', name: 'Asia/Tokyo' },
      ]),
    ).toBe('Europe/Rome (línea 2); Asia/Tokyo');
    expect(shownIn(['a', 'b'])).toBe('a, b');
    expect(shownIn({ is: 'order-span', order: 'month-first', from: '2026-03-04', to: '-' })).toBe(
      'primero el mes: 2026-03-04 … -',
    );
    expect(shownIn({ is: 'role', role: 'medication-dose' })).toBe('cantidad de medicina');
  });

  test('every role but the one that means none has a word', () => {
    for (const role of ROLES.filter((one) => one !== 'ignore'))
      expect(speaker.sayIfKnown(`understood.roles.${role}`)).not.toBeNull();
  });
});

test('a source keeps its citations, and says in the language of the paper what it says of them', () => {
  const source = '{time-to-peak}: Daenen 2010, Diabetes Metab 36:165-169, table 4; Parkes 2000 ({borders-from-memory})';
  expect(sourceText(speaker, source)).toBe(
    'Tiempo hasta el máximo: Daenen 2010, Diabetes Metab 36:165-169, tabla 4; Parkes 2000 (bordes, de memoria)',
  );
});

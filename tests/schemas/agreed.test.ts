import { describe, expect, test } from 'vitest';
import { readAgreed } from '../../src/schemas/agreed.ts';

const labels = {
  goal: ['Goals we agreed', 'Metas que acordamos'],
  step: ['My next step', 'Mi próximo paso'],
  helper: ['Who helps', 'Quién me ayuda'],
  nextVisit: ['Next date', 'Próxima fecha'],
  sure: [
    'How sure am I that I can do it? (0 not at all, 10 completely)',
    '¿Qué seguridad tengo de poder hacerlo? (0 ninguna)',
  ],
  question: ['My question', 'Mi pregunta'],
  remarks: ['Remarks', 'Observaciones'],
  interpretation: ['Interpretation', 'Interpretación'],
  by: ['Written by', 'Lo escribió'],
  on: ['Written on', 'Escrito el'],
};
const read = (text: string) => readAgreed(text, labels);
const agreed = {
  goal: 'fewer lows after football',
  step: 'a banana: before, not after',
  helper: 'Ana',
  nextVisit: '2026-06-10',
  sure: 7,
};

describe('what was agreed', () => {
  test.each([
    [
      'a filled form',
      '# Type behind the colons.\r\nGoals we agreed: fewer lows after football\r\nMy next step: a banana: before, not after\r\nWho helps: Ana\r\nNext date: 2026-06-10\r\nHow sure am I that I can do it? (0 not at all, 10 completely): 7\r\nMy question: \r\n',
    ],
    [
      'the form of another language, without accents and in any case',
      'METAS QUE ACORDAMOS: fewer lows after football\nmi proximo paso : a banana: before, not after\nquien me ayuda: Ana\nproxima fecha:2026-06-10\nQué seguridad tengo de poder hacerlo: 7\n',
    ],
    ['JSON', JSON.stringify(agreed)],
    [
      'the names of JSON as labels',
      Object.entries(agreed)
        .map(([name, value]) => `${name}: ${value}`)
        .join('\n'),
    ],
  ])('as %s', (_, text) => {
    expect(read(text)).toEqual({ ok: true, agreed });
  });

  test('remarks and an interpretation run over several lines, each with its label; who wrote it and when', () => {
    const text =
      'Remarks: sleeps badly\nRemarks:\nObservaciones: new job\nInterpretation: a\nWritten by: Dr B\nWritten on: 2026-05-31';
    const found = { remarks: 'sleeps badly\nnew job', interpretation: 'a', by: 'Dr B', on: '2026-05-31' };
    expect(read(text)).toEqual({ ok: true, agreed: found });
    expect(read(JSON.stringify(found))).toEqual({ ok: true, agreed: found });
  });

  test('an empty form says nothing', () => {
    expect(read('# what\nMy next step: \n\n')).toEqual({ ok: true, agreed: {} });
  });

  test.each([
    ['a line without a label', 'My next step: x\nand so on', '2: and so on'],
    ['an unknown label', 'Dose: 3', '1: Dose: 3'],
    ['a label twice', 'Who helps: A\nWho helps: B', '2: Who helps: B'],
    ['a date that is none', 'Next date: soon', 'nextVisit: "soon"'],
    ['a sureness in words', 'sure: very', 'sure: "very"'],
    ['a sureness over ten', 'sure: 11', 'sure: 11'],
    ['a text without end', `goal: ${'x'.repeat(400)}`, 'goal: "xxx'],
    ['a text that turns its direction', 'goal: a\u202eb', 'goal: "a'],
    ['JSON with an unknown name', '{"dose": 3}', 'dose'],
    ['a goal on two lines', '{"goal": "a\\nb"}', 'goal'],
    ['broken JSON', '{', 'JSON'],
  ])('%s is refused with its place', (_, text, place) => {
    const found = read(text);
    expect(!found.ok && found.problems[0]).toContain(place);
  });
});

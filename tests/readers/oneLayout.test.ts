import { expect, it } from 'vitest';
import { readInputs } from '../../src/readers/index.ts';
import { TODAY } from './digest.ts';
import { lines, stamp, sugar } from './evidence/tables.ts';

/** A file whose column of kinds holds words nobody knows, and which no other file holds. */
const file = (n: number) => ({
  name: `${n}.csv`,
  bytes: new TextEncoder().encode(
    `Time,Kind,Value (mg/dL)\n${lines(40, (i) => `${stamp(i)},Qx${n},${sugar(i)}\n${stamp(i)},Vb${n},${4 + (i % 5)}`)}\n`,
  ),
});

const answersOf = (count: number): string[] =>
  readInputs(
    Array.from({ length: count }, (_, n) => file(n)),
    { today: TODAY },
  ).flatMap(({ issues }) =>
    issues.flatMap((issue) =>
      'question' in issue && issue.question?.of === 'layout' ? (issue.question.answer ?? []) : [],
    ),
  );

it('asks with what the other files of a run need too', () => {
  const answers = answersOf(3);
  expect(answers).toHaveLength(3);
  for (const answer of answers) for (const word of ['Vb0', 'Vb1', 'Vb2']) expect(answer).toContain(word);
});

it('leaves each of very many files its own question, in time that grows with their number', () => {
  const answers = answersOf(120);
  expect(answers).toHaveLength(120);
  expect(Math.max(...answers.map(({ length }) => length))).toBeLessThan(200);
  expect(answers[7]).toContain('Vb7');
});

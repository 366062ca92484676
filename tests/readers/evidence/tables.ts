import type { ReadFile, ReadSettings } from '../../../src/model/input.ts';
import type { Issue } from '../../../src/model/issues.ts';
import { readInputs } from '../../../src/readers/index.ts';
import { TODAY } from '../digest.ts';

/** An invented sensor: every five minutes from 07:00, mg/dL. */
export const sugar = (i: number): number => Math.round(140 + 50 * Math.sin(i / 30) + 12 * Math.sin(i / 7));

export const START = Date.UTC(2026, 0, 14, 7);

/** `2026-01-14 07:00`, five minutes on for each `i`. */
export const stamp = (i: number, minutes = 5): string =>
  new Date(START + i * minutes * 60_000).toISOString().slice(0, 16).replace('T', ' ');

export const lines = (n: number, line: (i: number) => string): string =>
  Array.from({ length: n }, (_, i) => line(i)).join('\n');

/** A table of `n` rows under a header; `rest` gives the cells behind the time. */
export const table = (header: string, n: number, rest: (i: number) => string): string =>
  `${header}\n${lines(n, (i) => `${stamp(i)},${rest(i)}`)}\n`;

export function read(text: string, settings: Partial<ReadSettings> = {}, name = 'a.csv'): ReadFile {
  return readInputs([{ name, bytes: new TextEncoder().encode(text) }], { today: TODAY, ...settings })[0]!;
}

export const numbers = ({ readings }: ReadFile): number[] => [...readings.native];
export const times = ({ readings }: ReadFile): string[] =>
  [...readings.wall].map((wall) => new Date(wall).toISOString().slice(0, 16).replace('T', ' '));

export const refusals = ({ issues }: ReadFile): string[] =>
  issues.filter(({ level }) => level === 'refusal').map(({ code }) => code);

/** The settings that a refusal's own question names; a word left open is filled in by `fill`. */
export function advice(file: ReadFile, fill = ''): Partial<ReadSettings> {
  const asked = file.issues.find(
    (issue): issue is Issue & { question: object } => 'question' in issue && issue.level === 'refusal',
  );
  const question = asked?.question as { of: string; answer?: string } | undefined;
  if (question?.of === 'layout' && question.answer)
    return { layout: JSON.parse(question.answer.replaceAll('…', fill)) };
  if (question?.of === 'unit') return { unit: question.answer as 'mg/dL' };
  if (question?.of === 'day-order') return { dateOrder: question.answer as 'day-first' };
  return {};
}

import { describe, expect, test } from 'vitest';
import type { ReadFile } from '../../src/model/input.ts';
import { readInputs } from '../../src/readers/index.ts';
import { TODAY } from './digest.ts';

import { forms } from './handWritten/forms.ts';
import { languages } from './handWritten/languages.ts';
import { open } from './handWritten/open.ts';
import { at, mg, mm, N } from './handWritten/rows.ts';

/**
 * Exports as imaginary hospitals, researchers and people at home would make them, written by hand, each with its truth: ten hours of
 * an invented sensor every five minutes and a few notes. None follows a real product.
 */
const read = { ...languages, ...forms };

const readOne = (text: string, name = 'a.csv'): ReadFile =>
  readInputs([{ name, bytes: new TextEncoder().encode(text) }], { today: TODAY })[0]!;

describe('an export that tells all it takes', () => {
  test.each(Object.entries(read))('%s', (_, { text, unit, notes = {}, name }) => {
    const { readings, notes: found, issues } = readOne(text, name);
    expect(issues.filter(({ level }) => level === 'refusal')).toEqual([]);
    const values = Array.from({ length: readings.count }, (_, k) => [
      readings.wall[k],
      readings.limit[k] === 0 ? readings.native[k] : readings.limit[k],
      readings.unit[k],
    ]);
    const truth = Array.from({ length: N }, (_, i) => {
      const value = unit === 'mg/dL' ? mg(i) : mm(i);
      const beyond = text.includes('zu niedrig') ? { 50: -1, 90: 1 }[i] : undefined;
      return [at(i).ms, beyond ?? value, unit === 'mg/dL' ? 0 : 1];
    });
    expect(values.sort(([a], [b]) => a! - b!)).toEqual(truth);
    const kinds: Record<string, number> = {};
    for (const { kind } of found) kinds[kind] = (kinds[kind] ?? 0) + 1;
    expect(kinds).toEqual(notes);
  });

  test('bread units are kept as they are written, and are no grams', () => {
    const { notes } = readOne(languages['a Russian log that counts bread units']!.text);
    const meals = notes.filter(({ kind }) => kind === 'meal');
    expect(meals.map(({ amount, text }) => [amount, text])).toEqual(Array(3).fill([undefined, '3 ХЕ']));
  });
});

describe('an export that leaves something open gives no reading, and says why', () => {
  test.each(Object.entries(open))('%s', (_, { text, code, name }) => {
    const { readings, issues } = readOne(text, name);
    expect(issues.flatMap((issue) => (issue.level === 'refusal' ? issue.code : []))).toContain(code);
    expect(readings.count).toBe(0);
  });
});

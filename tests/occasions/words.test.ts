import { describe, expect, test } from 'vitest';
import { logReader, NO_LOG_WORDS } from '../../src/occasions/words.ts';
import { checkLogWords } from '../../src/schemas/logWords.ts';
import { logWords } from './logs.ts';

const read = logReader(logWords);

/** Labels of the open data excerpt (T1D-UOM) and of invented logs, and whether they are one food. */
describe('food names', () => {
  test.each([
    ['Toast (x2)', 'Toast '],
    ['One round of toast', 'Two rounds of toast'],
    ['Weetabix (x2)', 'Weetabix (1)'],
    ['Apple', 'apples'],
    ['2 Biscuits', 'biscuit'],
    ['Granola + yoghurt', 'granola and yogurt'],
    ['Oatmeal', 'PORRIDGE'],
    ['Berries', 'berry'],
    ['40 g rice', 'rice'],
  ])('%s and %s are one', (one, other) => {
    expect(read.food(one)).not.toBeNull();
    expect(read.food(other)).toBe(read.food(one));
  });

  test.each([
    ['Pancakes', 'Pancakes + apple'],
    ['Lentil Soup', 'Lentil Soup + cheese'],
    ['Cheese Sandwich', 'Chicken Avo Sandwich'],
    ['Standard breakfast', 'Standard Lunch'],
    ['gas', 'ga'],
    ['couscous', 'couscou'],
  ])('%s and %s are two', (one, other) => {
    expect(read.food(other)).not.toBe(read.food(one));
  });

  // Byte 8F is è in the old encoding of one system (from memory); one log of the open data has it as U+008F.
  test('a letter lost before the file came to us stays in its word', () => {
    expect(read.food('Cr\u008fme Egg')).toBe('cr\ufffdme egg');
  });

  test('joins may be signs and words of any language', () => {
    const spanish = logReader({ ...logWords, joins: ['&', 'más', 'y/o', '"', '.'] });
    expect(spanish.food('huevo más pan')).toBe('huevo, pan');
    expect(spanish.food('huevo & pan')).toBe('huevo, pan');
    expect(spanish.food('huevo y/o pan')).toBe('huevo, pan');
    expect(spanish.food('huevo con pan')).toBe('huevo con pan');
  });

  test('are shown as they were first written, without amounts', () => {
    const fresh = logReader(logWords);
    expect(fresh.food('two slices Toast, eggs')).toBe('toast, eggs');
    expect(fresh.food('toast + egg')).toBe('toast, eggs');
  });

  test.each([[''], ['  '], ['2 x'], ['(x2)'], ['Snack'], ['evening meal'], ['a'.repeat(60)]])(
    '"%s" is no name',
    (label) => {
      expect(read.food(label)).toBeNull();
    },
  );

  test('stay as written without any words', () => {
    const plain = logReader(NO_LOG_WORDS);
    expect(plain.food('Yogurt')).toBe('yogurt');
    expect(plain.food('Yoghurts')).toBe('yoghurts');
  });
});

test.each([
  ['running, hard', 'hard'],
  ['easy walk', 'light'],
  ['football', 'not-noted'],
  ['hardware shop', 'not-noted'],
] as const)('effort of "%s" is %s', (text, effort) => {
  expect(read.effort(text)).toBe(effort);
});

test.each([
  ['long-acting', true],
  ['L', true],
  ['rapid', false],
  ['along', false],
] as const)('insulin "%s" is long-acting: %s', (label, long) => {
  expect(read.longActing(label)).toBe(long);
});

test('what is written wins as the part of the day', () => {
  expect(read.slot('Breakfast')).toBe('morning');
  expect(read.slot('Snack')).toBe('snack');
  expect(read.slot('Standard lunch + pie')).toBe('midday');
  expect(read.slot('pie')).toBeNull();
});

test('a file of words that does not fit is told place by place', () => {
  expect(checkLogWords(logWords)).toEqual({ words: logWords });
  const broken = {
    ...logWords,
    amounts: 'slice',
    plurals: [['s']],
    extra: [],
    effort: { light: [] },
    meals: { noon: [] },
  };
  expect(checkLogWords(broken)).toEqual({
    problems: ['amounts: "slice"', 'plurals.0: […]', 'meals.noon', 'effort.hard', 'extra'],
  });
  expect(checkLogWords([])).toEqual({ problems: ['{ }: []'] });
});

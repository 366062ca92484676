import { describe, expect, test } from 'vitest';
import { besideTopic, type Found } from '../../src/findings/index.ts';
import { comparisonsLike, mealsLike, noteLogLike } from '../../src/findings/occasionExamples.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { Comparison, Meal } from '../../src/model/occasions.ts';
import { changed, looked } from './looked.ts';

/** What findings about notes say where they hold, and which notes they may count. Rules ours. */

describe('high after meals', () => {
  const high = Array.from({ length: 9 }, () => ({ highMinutes: 90 }));
  const low = Array.from({ length: 9 }, () => ({ highMinutes: 0 }));
  const meals = (...lists: { list: typeof high; more: Partial<Meal> }[]): Measures['meals'] => {
    const value = lists.flatMap(({ list, more }) => {
      const made = mealsLike(...list);
      return made.ok ? made.value.map((meal): Meal => ({ ...meal, ...more })) : [];
    });
    return { ok: true, value, n: value.length, of: 'occasions' };
  };

  test.each<[string, Partial<Meal>]>([
    ['that were inferred', { inferred: true }],
    ['that cannot be used', { unusable: ['gap'] }],
    ['without a course', { course: null }],
  ])('counts no meals %s', (_, more) => {
    expect(looked('high-after-meals', { meals: meals({ list: high, more }) }).case).toBe('untold');
    const both = meals({ list: high.slice(0, 7), more }, { list: low, more: {} });
    expect(looked('high-after-meals', { meals: both }).case).toBe('absent');
  });

  test('tells the part of the day most often followed by it, wherever it stands', () => {
    const seven = { list: [...high.slice(0, 7), ...low.slice(0, 1)], more: { slot: 'morning' as const, minute: 480 } };
    const nine = { list: [...high, ...low.slice(0, 4)], more: {} };
    for (const order of [
      [seven, nine],
      [nine, seven],
    ])
      expect(looked('high-after-meals', { meals: meals(...order) })).toMatchObject({
        slot: 'morning',
        count: 7,
        of: 8,
      });
    expect(
      looked('high-after-meals', { meals: meals({ list: high, more: {} }, { ...seven, list: high }) }),
    ).toMatchObject({
      slot: 'evening',
    });
  });
});

describe('notes beside glucose', () => {
  const hint = (id: Comparison['id'], difference: number, slot: Comparison['slot'] = null) => {
    const made = comparisonsLike({ id, verdict: 'hint', difference, slot });
    if (!made.ok) throw new Error(made.why);
    return made.value[0]!;
  };
  const told = (id: string, ...value: Comparison[]) =>
    looked(id, { comparisons: { ok: true, value, n: value.length, of: 'pairs' } });

  test('of several hints the largest is told, of equals the first', () => {
    const food = (difference: number, slot: Comparison['slot']) => hint('food', difference, slot);
    for (const order of [
      [food(30, 'morning'), food(60, 'evening')],
      [food(60, 'evening'), food(30, 'morning')],
    ])
      expect(told('food-longer-high', ...order)).toMatchObject({ slot: 'evening', longer: 'first' });
    expect(told('food-longer-high', food(60, 'morning'), food(60, 'evening'))).toMatchObject({ slot: 'morning' });
    expect(told('food-shorter-high', food(-30, 'morning'), food(-60, 'evening'))).toMatchObject({ slot: 'evening' });
  });

  test('one without a difference, or with one of 0, is no hint to either side', () => {
    const none = { ...hint('food', 60), difference: null };
    const zero = { ...hint('food', 60), difference: { value: 0, low: -1, high: 1 } };
    for (const one of [none, zero])
      for (const id of ['food-longer-high', 'food-shorter-high']) expect(told(id, one).case).toBe('absent');
  });

  test.each(['exercise-kind', 'extra-carbs-night'] as const)('%s is not told without both medians', (id) => {
    const one = hint(id, 20);
    const finding = id === 'exercise-kind' ? 'exercise-kinds' : 'extra-carbs-first';
    expect(told(finding, one).case).toBe('holds');
    expect(told(finding, { ...one, b: { ...one.b, median: null } }).case).toBe('absent');
    expect(told(finding, { ...one, a: { ...one.a, median: null } }).case).toBe('absent');
  });

  test('late notes are counted among those that were written, not among inferred meals', () => {
    const late = mealsLike(...Array.from({ length: 4 }, () => ({ late: true, riseBefore: 35 })), {}, {});
    const meals = changed(late, (value) => [
      ...value,
      ...value.map((meal) => ({ ...meal, inferred: true, late: false })),
      ...value.map((meal) => ({ ...meal, inferred: true, late: false })),
    ]);
    expect(looked('late-notes', { meals })).toMatchObject({ count: 4, of: 6, before: 35 });
  });

  test('few notes are untold where no day is', () => {
    expect(looked('few-notes', { noteLog: noteLogLike({ days: 0, noted: 0 }) }).case).toBe('untold');
  });

  test('beside the topic stands the first that holds and fits it, or nothing', () => {
    const found = (...ids: string[]): Found[] => [
      { id: 'larger-meals', look: { case: 'absent' } },
      ...ids.map((id): Found => ({ id, look: { case: 'holds', params: {}, where: [] } })),
    ];
    const beside = (topics: string[], ...ids: string[]) =>
      besideTopic(found(...ids), topics.map((id) => ({ id })) as never);
    expect(beside(['time-in-range'], 'low-after-meal', 'weekend-meals', 'food-shorter-high')).toBe('weekend-meals');
    expect(beside(['lows-at-night'], 'low-after-meal', 'weekend-meals')).toBeNull();
    expect(beside(['lows-at-night', 'very-low'], 'low-after-meal')).toBe('low-after-meal');
    expect(beside(['dawn-rise', 'high-after-window'], 'weekend-meals')).toBe('weekend-meals');
    expect(beside([], 'weekend-meals')).toBeNull();
  });
});

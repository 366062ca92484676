import { describe, expect, test } from 'vitest';
import type { FindingId, Found } from '../../src/findings/index.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { Comparison, Meal } from '../../src/model/occasions.ts';
import { besideTopic } from '../../src/topics/index.ts';
import { exampleDate } from '../support/examples/measures.ts';
import {
  comparisonsLike,
  correctionsLike,
  mealsLike,
  noteLogLike,
  sessionsLike,
} from '../support/examples/occasions.ts';
import { changed, looked } from './looked.ts';

/** What findings about notes say where they hold, and which notes they may count. Rules ours. */

describe('high after meals', () => {
  const high = Array.from({ length: 9 }, () => ({ highMinutes: 90 }));
  const low = Array.from({ length: 9 }, () => ({ highMinutes: 0 }));
  const meals = (...lists: { list: typeof high; more: Partial<Meal> }[]): Measures['meals'] => {
    const value = lists.flatMap(({ list, more }) => {
      const exampleMeals = mealsLike(...list);
      return exampleMeals.ok ? exampleMeals.value.map((meal): Meal => ({ ...meal, ...more })) : [];
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
    const hints = comparisonsLike({ id, verdict: 'hint', difference, slot });
    if (!hints.ok) throw new Error(hints.why);
    return hints.value[0]!;
  };
  const lookAt = (id: FindingId, ...value: Comparison[]) =>
    looked(id, { comparisons: { ok: true, value, n: value.length, of: 'pairs' } });

  test('of several hints the largest is told, of equals the first', () => {
    const food = (difference: number, slot: Comparison['slot']) => hint('food', difference, slot);
    for (const order of [
      [food(30, 'morning'), food(60, 'evening')],
      [food(60, 'evening'), food(30, 'morning')],
    ])
      expect(lookAt('food-longer-high', ...order)).toMatchObject({ slot: 'evening', longer: 'first' });
    expect(lookAt('food-longer-high', food(60, 'morning'), food(60, 'evening'))).toMatchObject({ slot: 'morning' });
    expect(lookAt('food-shorter-high', food(-30, 'morning'), food(-60, 'evening'))).toMatchObject({ slot: 'evening' });
  });

  test('one without a difference, or with one of 0, is no hint to either side', () => {
    const none = { ...hint('food', 60), difference: null };
    const zero = { ...hint('food', 60), difference: { value: 0, low: -1, high: 1 } };
    for (const one of [none, zero])
      for (const id of ['food-longer-high', 'food-shorter-high'] as const) expect(lookAt(id, one).case).toBe('absent');
  });

  test.each(['exercise-kind', 'extra-carbs'] as const)('%s is not told without both medians', (id) => {
    const one = hint(id, 20);
    const finding = id === 'exercise-kind' ? 'exercise-kinds' : 'extra-carbs-first';
    expect(lookAt(finding, one).case).toBe('holds');
    expect(lookAt(finding, { ...one, b: { ...one.b, median: null } }).case).toBe('absent');
    expect(lookAt(finding, { ...one, a: { ...one.a, median: null } }).case).toBe('absent');
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
    const found = (...ids: FindingId[]): Found[] => [
      { id: 'larger-meals', look: { case: 'absent' } },
      ...ids.map((id): Found => ({ id, look: { case: 'holds', params: {}, where: [] } })),
    ];
    const secondTo = (topics: FindingId[], ...ids: FindingId[]) =>
      besideTopic(found(...ids), topics.map((id) => ({ id })) as never);
    expect(secondTo(['time-in-range'], 'low-after-meal', 'weekend-meals', 'food-shorter-high')).toBe('weekend-meals');
    expect(secondTo(['lows-at-night'], 'low-after-meal', 'weekend-meals')).toBeNull();
    expect(secondTo(['lows-at-night', 'very-low'], 'low-after-meal')).toBe('low-after-meal');
    expect(secondTo(['dawn-rise', 'high-after-window'], 'weekend-meals')).toBe('weekend-meals');
    expect(secondTo([], 'weekend-meals')).toBeNull();
  });
});

describe('low after meals, and after insulin without food', () => {
  const four = <T>(value: T): T[] => new Array<T>(4).fill(value);
  const wanted = { case: 'holds', count: 4, of: 4 };
  const where = [0, 1, 2, 3].map((day) => ({ date: exampleDate(day), toMinute: 1350 }));

  test.each([
    ['that cannot be used', (meal: Meal): Meal => ({ ...meal, unusable: ['gap'] })],
    ['without a course', (meal: Meal): Meal => ({ ...meal, course: null })],
    ['of which nobody knows', (meal: Meal): Meal => ({ ...meal, course: { ...meal.course!, low: null } })],
    ['without insulin noted', (meal: Meal): Meal => ({ ...meal, insulin: { when: 'none-noted' } })],
  ])('meals %s count on neither side', (_, lacking) => {
    const lows = mealsLike(...four({ low: true }));
    const lacked = changed(mealsLike(...four({ low: true }), ...new Array(9).fill({ low: false })), (v) =>
      v.map(lacking),
    );
    const meals = changed(lows, (value) => [...(lacked.ok ? lacked.value : []), ...value]);
    expect(looked('low-after-meal', { meals })).toMatchObject({ ...wanted, where });
    expect(looked('low-after-meal', { meals: lacked })).toEqual({ case: 'untold', why: 'too-few-occasions' });
  });

  test.each([
    ['that cannot be used', { unusable: ['gap' as const] }],
    ['of which nobody knows', { low: null }],
  ])('insulin notes %s count on neither side', (_, lacking) => {
    const lacked = [...four({ low: true, ...lacking }), ...new Array(9).fill({ low: false, ...lacking })];
    const corrections = correctionsLike(...four({ low: true }), ...lacked);
    expect(looked('low-after-insulin-only', { corrections })).toMatchObject({
      ...wanted,
      where: [0, 1, 2, 3].map((day) => ({ date: exampleDate(day), fromMinute: 930, toMinute: 1170 })),
    });
    expect(looked('low-after-insulin-only', { corrections: correctionsLike(...lacked) }).case).toBe('untold');
  });

  test('three occasions are enough', () => {
    expect(looked('low-after-meal', { meals: mealsLike(...four({ low: true }).slice(1)) }).case).toBe('holds');
    const corrections = correctionsLike(...four({ low: true }).slice(1));
    expect(looked('low-after-insulin-only', { corrections }).case).toBe('holds');
  });
});

/** How often is ours: twice or more, on a third of the days or more, twice as often as after rest days or more. */
describe('lows from exercise until morning', () => {
  const night = (low: number, of: number, restLow: number, rest: number, more: Partial<Comparison> = {}) => {
    const comparisons = changed(
      comparisonsLike({ id: 'exercise-or-rest', verdict: 'not-told-apart', difference: -20 }),
      (value) =>
        value.map((one) => ({
          ...one,
          a: { ...one.a, lows: low, lowsOf: of },
          b: { ...one.b, lows: restLow, lowsOf: rest },
          ...more,
        })),
    );
    return looked('exercise-or-rest', { comparisons, exercise: sessionsLike({ low: true }, {}, {}) });
  };
  const hint = (value: number | null, verdict: Comparison['verdict'] = 'hint'): Partial<Comparison> => ({
    verdict,
    difference: value === null ? null : { value, low: value - 5, high: value + 5 },
  });

  test.each([
    ['2 of 6 nights: a third', 2, 6, 0, 9, 'holds'],
    ['2 of 7 nights: less than a third', 2, 7, 0, 9, 'absent'],
    ['6 of 19 nights: less than a third', 6, 19, 0, 9, 'absent'],
    ['1 of 2 nights: once', 1, 2, 0, 9, 'absent'],
    ['2 of 2 nights', 2, 2, 0, 9, 'holds'],
    ['2 of 4 beside 2 of 8: twice as often', 2, 4, 2, 8, 'holds'],
    ['2 of 4 beside 2 of 7: less than twice as often', 2, 4, 2, 7, 'absent'],
    ['10 of 20 beside 13 of 50: less than twice as often', 10, 20, 13, 50, 'absent'],
    ['2 of 6 beside 1 of 6: twice as often', 2, 6, 1, 6, 'holds'],
    ['none after exercise, none after rest', 0, 6, 0, 9, 'absent'],
    ['no night after exercise seen', 0, 0, 1, 9, 'untold'],
    ['no night after rest seen', 2, 4, 0, 0, 'untold'],
  ])('%s', (_, low, of, restLow, rest, expected) => {
    expect(night(low, of, restLow, rest).case).toBe(expected);
  });

  test('without a hint are told as counts, with the nights that were low', () => {
    expect(night(2, 4, 2, 9)).toEqual({
      case: 'holds',
      variant: 'count',
      where: [{ date: exampleDate(0), fromMinute: 1100, toMinute: 1440 }],
      limit: { q: 'limit', of: 'low' },
      low: 2,
      days: 4,
      restLow: 2,
      rest: 9,
      from: 1110,
      six: 360,
      leftOut: 2,
      hint: 'count',
    });
  });

  test.each<[string, number, Partial<Comparison>, string | undefined]>([
    ['one low night and a hint', 1, hint(-20), 'hint'],
    ['a hint, yet no low night', 0, hint(-20), undefined],
    ['a hint that nights lie higher', 1, hint(20), undefined],
    ['a hint of no difference', 1, hint(0), undefined],
    ['a hint without a difference', 1, hint(null), undefined],
    ['lower, yet no hint', 1, hint(-20, 'not-told-apart'), undefined],
    ['two of four, and a hint that nights lie higher', 2, hint(20), 'count'],
  ])('%s', (_, low, more, variant) => {
    expect(night(low, 4, 1, 9, more).variant).toBe(variant);
  });
});

import { describe, expect, test } from 'vitest';
import { type Asked, NOTHING_ASKED } from '../../src/measures/context.ts';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, type NoteOn, timelineOf } from '../support/timeline.ts';

/** How many notes a number rests on. The rules for meals and corrections are held in tests/occasions. */
const of = (days: DaysOf, asked: Partial<Asked> = {}) =>
  measure(timelineOf(days), targetSets.adult, undefined, { ...NOTHING_ASKED, ...asked });

/** Climbs at noon, without a note, by 60 mg/dL in an hour. */
const noon = (minute: number) => (minute < 720 ? 110 : minute < 780 ? 110 + (minute - 720) : minute < 900 ? 170 : 110);
const meal = (day: number, minute = 480, more: Partial<NoteOn> = {}): NoteOn => ({
  day,
  minute,
  kind: 'meal',
  amount: 40,
  unit: 'g',
  label: 'rice',
  ...more,
});

describe('meals', () => {
  const lost = [{ day: 1, from: 480, to: 600 }];

  test('count where they can be used and were written', () => {
    const { meals } = of({ days: 4, value: noon, notes: [meal(0), meal(1), meal(2)], without: lost });
    expect(meals).toMatchObject({ ok: true, n: 2, value: { length: 3 } });
  });

  test('are inferred only when asked for, and count in no number', () => {
    const days = { days: 4, value: noon, notes: [meal(0)] };
    expect(of(days).meals).toMatchObject({ n: 1, value: { length: 1 } });
    const { meals } = of(days, { inferMeals: true });
    expect(meals).toMatchObject({ n: 1 });
    expect(meals.ok && meals.value.filter(({ inferred }) => inferred).length).toBe(4);
  });
});

test('corrections count where they can be used', () => {
  const insulin = (day: number): NoteOn => ({ day, minute: 960, kind: 'insulin', amount: 2, unit: 'U' });
  const notes = [insulin(0), insulin(1), insulin(2)];
  const { corrections } = of({ days: 3, value: noon, notes, without: [{ day: 1, from: 900, to: 1300 }] });
  expect(corrections).toMatchObject({ ok: true, n: 2, value: { length: 3 } });
});

test('comparisons count where there are enough of both kinds', () => {
  const notes = Array.from({ length: 14 }, (_, day) => meal(day, 480, { label: day % 2 === 0 ? 'rice' : 'oats' }));
  const { comparisons } = of({ value: noon, notes });
  if (!comparisons.ok) throw new Error(comparisons.why);
  const enough = comparisons.value.filter(({ verdict }) => verdict !== 'too-few').length;
  expect(comparisons.n).toBe(enough);
  expect(enough).toBeGreaterThan(0);
  expect(enough).toBeLessThan(comparisons.value.length);
});

describe('medicines', () => {
  const medicines = [{ id: 'a', words: ['Paracetamol', 'vitamin c'], source: '' }];
  const noted = (note: Partial<NoteOn>) => {
    const notes: NoteOn[] = [{ day: 1, minute: 600, kind: 'medication', ...note }];
    const { medicinesNoted } = of({ days: 2, value: () => 100, notes }, { medicines });
    if (!medicinesNoted.ok) throw new Error(medicinesNoted.why);
    return medicinesNoted.value.list;
  };

  test.each([
    ['PARACETAMOL', 'Paracetamol'],
    ['took paracetamol, 500', 'Paracetamol'],
    ['vitamin -- C', 'vitamin c'],
    ['(vitamin  c)', 'vitamin c'],
  ])('are found in any case and between any signs: %s', (text, word) => {
    const found = [{ id: 'a', noted: word, date: '2026-03-03', minute: 600 }];
    expect(noted({ text })).toEqual(found);
    expect(noted({ label: text })).toEqual(found);
  });

  test('are not found inside a word; a note without a time has none', () => {
    expect(noted({ label: 'vitaminc' })).toEqual([]);
    expect(noted({ label: 'paracetamol' })).toHaveLength(1);
    expect(noted({ text: 'paracetamol', minute: undefined as never })).toMatchObject([{ minute: null }]);
  });
});

describe('the range of the CV', () => {
  const spread = (minute: number, day: number) => 120 + 30 * Math.sin(minute / 100) + 3 * day;
  const full = (days: number): DaysOf => ({
    value: (minute, day) => (day < days || minute < 600 ? spread(minute, day) : null),
  });

  test('asks for ten full days, and for ten that hold numbers', () => {
    expect(of(full(10)).cvRange.ok).toBe(true);
    expect(of(full(9)).cvRange).toEqual({ ok: false, why: 'too-few-days' });
    const unknown = { native: Number.NaN, limit: 1 } as const;
    const bounded = (known: number): DaysOf => ({
      value: (minute, day) => (day < known ? spread(minute, day) : unknown),
    });
    expect(of(bounded(10)).cvRange).toMatchObject({ ok: true, n: 10 });
    expect(of(bounded(9)).cvRange).toEqual({ ok: false, why: 'bound-unknown' });
  });

  test('is of the CV of all readings (n, not n - 1, of thousands)', () => {
    const { cv, cvRange } = of(full(14));
    expect(cv.ok && cvRange.ok && cvRange.value.value / cv.value).toBeCloseTo(1, 3);
  });
});

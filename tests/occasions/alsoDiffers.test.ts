import { describe, expect, test } from 'vitest';
import type { Noted } from '../../src/model/occasions.ts';
import { alsoDiffers } from '../../src/occasions/alsoDiffers.ts';
import { measuredValue } from '../support/measuredValue.ts';
import type { NoteOn } from '../support/timeline.ts';
import { measured } from './logs.ts';

const bedtime: Noted = { id: 'bedtime-food', name: '' };
const food = (name: string): Noted => ({ id: 'food', name });
/** So many occasions, of which the first ones hold a note. */
const side = (n: number, ...held: [note: Noted, times: number][]): Noted[][] =>
  Array.from({ length: n }, (_, i) => held.flatMap(([note, times]) => (i < times ? [note] : [])));

/** The note that differs most, by a third of the occasions or more (ours). */
describe('by which note two sides differ as well', () => {
  test('4 of 4 against 0 of 5 is named', () => {
    expect(alsoDiffers(side(4, [bedtime, 4]), side(5), [])).toEqual({
      ...bedtime,
      a: { k: 4, n: 4 },
      b: { k: 0, n: 5 },
    });
  });

  test('whichever side has it', () => {
    expect(alsoDiffers(side(5), side(4, [bedtime, 4]), [])).toMatchObject({ a: { k: 0, n: 5 }, b: { k: 4, n: 4 } });
  });

  test.each([
    ['a third', 1, 3, true],
    ['less than a third', 1, 4, false],
    ['nothing', 0, 3, false],
  ])('%s apart', (_, k, n, named) => {
    expect(alsoDiffers(side(n, [bedtime, k]), side(3), []) !== null).toBe(named);
  });

  test('of several the one furthest apart, of equals the first by name, however often it stands in one occasion', () => {
    const a = side(4, [food('rice'), 3], [bedtime, 4], [bedtime, 4]);
    expect(alsoDiffers(a, side(4), [])?.id).toBe('bedtime-food');
    expect(alsoDiffers(side(4, [food('soup'), 4], [food('rice'), 4]), side(4), [])?.name).toBe('rice');
  });

  test('not what parts the sides anyway, and never an alarm, which follows glucose', () => {
    expect(alsoDiffers(side(4, [bedtime, 4]), side(4), ['bedtime-food'])).toBeNull();
    expect(alsoDiffers(side(4, [{ id: 'alarm', name: '' }, 4]), side(4), [])).toBeNull();
    expect(alsoDiffers([], side(4, [bedtime, 4]), [])).toBeNull();
  });
});

/** Evenings of exercise at 18:00; those with a bar first also have bread at 21:30 (bedtime food: from 21:00, ours). */
test('food at bedtime is found between the start and 6, food first and food for lows are not it', () => {
  const notes = [0, 1, 2, 3, 4, 5].flatMap((day): NoteOn[] => {
    const run: NoteOn = { day, minute: 1080, kind: 'exercise', minutes: 40 };
    const tablets: NoteOn = { day, minute: 1300, kind: 'meal', label: 'glucose tablets', amount: 16, unit: 'g' };
    if (day > 2) return [run, tablets];
    return [
      { day, minute: 1050, kind: 'meal', label: 'oat bar', amount: 30, unit: 'g' },
      run,
      { day, minute: 1290, kind: 'meal', label: 'bread', amount: 40, unit: 'g' },
      tablets,
    ];
  });
  const { comparisons } = measured({ days: 8, value: () => 120, notes });
  const one = measuredValue(comparisons).find(({ id }) => id === 'extra-carbs')!;
  expect(one.alsoDiffers).toEqual({ ...bedtime, a: { k: 3, n: 3 }, b: { k: 0, n: 3 } });
});

test('sessions set apart or not seen whole are counted as left out', () => {
  const notes = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (day): NoteOn => ({
      day,
      minute: day === 6 ? 480 : 1080,
      kind: 'exercise',
      minutes: 40,
      label: day === 5 ? 'easy walk' : 'run',
    }),
  );
  const without = [{ day: 2, from: 1200, to: 1300 }];
  const { comparisons } = measured({ days: 9, value: () => 120, notes, without });
  const one = measuredValue(comparisons).find(({ id }) => id === 'extra-carbs')!;
  // Day 2 has a hole, day 5 was light, day 6 was in the morning.
  expect(one.b).toMatchObject({ n: 5, leftOut: 3 });
  const days = measuredValue(comparisons).find(({ id }) => id === 'exercise-or-rest')!;
  expect(days.a).toMatchObject({ n: 6, leftOut: 2 });
});

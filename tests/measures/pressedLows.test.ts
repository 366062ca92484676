import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { NoteKind } from '../../src/model/input.ts';
import { targetSets } from '../../src/targets/index.ts';
import { many, runOf, type Slot } from './runs.ts';

/** Slots of five minutes, or `step`, from `from` on. The rule is ours; that pressure gives false lows is from memory. */
function pressed(slots: readonly Slot[], from = 180, step = 5) {
  const { pressedLows } = measure(runOf(slots, { from, step }), targetSets.adult);
  if (!pressedLows.ok) throw new Error(pressedLows.why);
  return pressedLows.value;
}

const before = many(95, 6);
const after = many(95, 6);
const sudden = (length: number, value = 65) => [...before, ...many(value, length), ...after];

/** Falling from 100 to 60 by so much a slot. */
const line = (by: number): Slot[] => Array.from({ length: Math.floor(40 / by) }, (_, k) => 100 - by * (k + 1));

describe('a low that looks like pressure', () => {
  test.each<[string, number, number]>([
    ['21:59', 1319, 0],
    ['22:00', 1320, 1],
    ['07:59', 479, 1],
    ['08:00', 480, 0],
  ])('begins from 22:00 on and before 08:00: %s', (_, minute, expected) => {
    expect(pressed(sudden(6), minute - 30).list).toHaveLength(expected);
  });

  test.each<[string, Slot[], number]>([
    ['two hours', sudden(24), 1],
    ['five minutes more', sudden(25), 0],
    ['begins with the readings', [...many(69, 2), ...many(40, 4), ...after], 0],
    ['ends with the readings', [...before, ...many(40, 4), ...many(69, 2)], 0],
    ['begins with the second reading', [95, ...many(65, 6), ...after], 1],
    ['ends three readings before the last', [...before, ...many(65, 6), 95, 95, 95], 1],
    ['begins after a gap', [...before, ...many(null, 6), ...many(69, 2), ...many(40, 4), ...after], 0],
  ])('%s', (_, slots, expected) => {
    const { list, lows } = pressed(slots);
    expect([list.length, lows]).toEqual([expected, 1]);
  });

  test.each<[string, Slot[], Slot[], number]>([
    ['25 mg/dL in five minutes, in and out', [90], [90], 1],
    ['24 going in', [89], [90], 0],
    ['24 coming out', [90], [89], 0],
    ['25 over the quarter of an hour before it', [90, 80, 72], [90], 1],
    ['over twenty minutes', [90, 85, 80, 72], [90], 0],
    ['over the quarter of an hour after it', [90], [72, 80, 90], 1],
    ['over twenty minutes after it', [90], [72, 80, 85, 90], 0],
  ])('falls and comes back by 25 within 15 minutes: %s', (_, way, back, expected) => {
    const slots = [...many(way[0]!, 6), ...way, ...many(65, 6), ...back, ...many(back.at(-1)!, 6)];
    expect(pressed(slots).list).toHaveLength(expected);
  });

  test.each<[string, Slot[], number]>([
    ['120 minutes long', [...many(95, 30), ...many(65, 120), ...many(95, 30)], 1],
    ['121 minutes long', [...many(95, 30), ...many(65, 121), ...many(95, 30)], 0],
    ['falling by 25.5 in 15 minutes', [...many(100, 30), ...line(1.7), ...many(60, 30), ...many(95, 30)], 1],
    ['falling by 25 in 16 minutes', [...many(100, 30), ...line(25 / 16), ...many(60, 30), ...many(95, 30)], 0],
  ])('is told to the minute where readings are: %s', (_, slots, expected) => {
    expect(pressed(slots, 180, 1).list).toHaveLength(expected);
  });

  test('the fall may go on inside it, for 15 minutes in all', () => {
    const inside = (low: Slot[]) => [...many(90, 6), ...low, ...many(65, 6), ...after];
    expect(pressed(inside([69, 67])).list).toMatchObject([{ fall: 25, back: 30 }]);
    expect(pressed(inside([69, 68, 66])).list).toEqual([]);
    // From 75 on, by 15 in a quarter of an hour and by 25 in half an hour.
    expect(pressed([...many(75, 6), 69, 65, 60, 55, 50, 48, 48, ...after]).list).toEqual([]);
    expect(pressed([...before, 48, 48, 50, 55, 60, 65, 69, ...many(75, 6)]).list).toEqual([]);
  });

  test('lows, those at night, those below 54, and those of them that look like pressure, are counted apart', () => {
    const slow = (value: number): Slot[] => [80, 75, 70, 66, 62, 58, ...many(value, 6), 58, 62, 66, 70, 75, 80];
    const rest = (length: number) => many(95, length);
    const slots = [
      ...sudden(6),
      ...sudden(6, 50),
      ...sudden(6),
      ...rest(18),
      ...slow(52),
      ...rest(90),
      ...slow(56),
      ...slow(52),
      ...rest(30),
    ];
    const found = pressed(slots, 0);
    expect(found).toMatchObject({ lows: 6, nightLows: 3, veryLows: 3, pressedVeryLows: 1 });
    expect(found.list.map(({ low, fall }) => [low.level, fall])).toEqual([
      [1, 30],
      [2, 45],
      [1, 30],
    ]);
  });

  test.each<[NoteKind, number, number]>([
    // Minutes after the start of a low of half an hour.
    ['meal', -60, 0],
    ['meal', -61, 1],
    ['fingerstick', 30, 0],
    ['text', 31, 1],
    ['alarm', 10, 1],
    ['insulin-rate', 10, 1],
  ])('who notes something is awake: %s at %i', (kind, after, expected) => {
    const run = runOf(sudden(6), { from: 180 });
    const at = run.readings.at[6]! + after * 60_000;
    const note = { kind, at, day: 0, minute: 210 + after, timed: true };
    const { pressedLows } = measure({ ...run, notes: [note] as never }, targetSets.adult);
    expect(pressedLows.ok && pressedLows.value.list).toHaveLength(expected);
  });
});

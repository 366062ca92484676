import { describe, expect, test } from 'vitest';
import type { NoteBefore, Outcome, OutcomeNotes } from '../../src/model/notedBefore.ts';
import { measuredValue } from '../support/measuredValue.ts';
import type { DaysOf, NoteOn } from '../support/timeline.ts';
import { measured } from './logs.ts';

const run = (day: number): NoteOn => ({ day, minute: 1080, kind: 'exercise', minutes: 60, label: 'running' });
const written = (day: number): NoteOn => ({ day, minute: 720, kind: 'meal', label: 'soup', amount: 40, unit: 'g' });

/** 28 days with notes on each, exercise at 18:00 on `days`; low for half an hour from `from` on after each. */
function story(days: number[], from: number, more: Partial<DaysOf> = {}) {
  const at = (day: number, minute: number) => day * 1440 + minute;
  const measures = measured({
    days: 28,
    value: (minute, day) =>
      days.some((one) => at(day, minute) >= at(one, from) && at(day, minute) < at(one, from + 30)) ? 62 : 120,
    notes: [...Array.from({ length: 28 }, (_, day) => written(day)), ...days.map(run)],
    ...more,
  });
  return measuredValue(measures.notedBefore);
}
const of = (found: OutcomeNotes[], outcome: Outcome): OutcomeNotes => found.find((one) => one.of === outcome)!;
const note = ({ notes }: OutcomeNotes, id: NoteBefore['id'], name = ''): NoteBefore =>
  notes.find((one) => one.id === id && one.name === name)!;

const DAYS = [1, 4, 6, 9, 12, 15, 19, 22];

describe('what was noted before lows', () => {
  test('every low after exercise, none on days without: both ways, and a hint', () => {
    const lows = of(story(DAYS, 1380), 'lows');
    expect(lows).toMatchObject({ days: 28, events: 8, leftOut: 0 });
    expect(lows.notes[0]).toMatchObject({
      id: 'exercise',
      hours: 12,
      followed: { k: 8, n: 8 },
      withIt: { k: 8, n: 8 },
      without: { k: 0, n: 20 },
      verdict: 'hint',
    });
    // Exact: one way in C(28, 8) to lie so far apart, and none on the other side.
    expect(lows.notes[0]!.p).toBeCloseTo(1 / 3_108_105, 12);
  });

  test('a low after midnight belongs to the day before, and to its night', () => {
    const found = story(DAYS, 1440 + 120);
    expect(of(found, 'lows').dates).toEqual(of(story(DAYS, 1380), 'lows').dates);
    expect(note(of(found, 'night-lows'), 'exercise').withIt).toEqual({ k: 8, n: 8 });
    expect(of(story(DAYS, 1200), 'night-lows').dates).toEqual([]);
  });

  test('lows before exercise, however regular, do not follow it', () => {
    const exercise = note(of(story(DAYS, 600), 'lows'), 'exercise');
    expect(exercise).toMatchObject({ withIt: { k: 8, n: 8 }, followed: { k: 0, n: 8 }, verdict: 'not-told-apart' });
  });

  test.each([
    ['12 hours after its end', 1080 + 60 + 720, 8],
    ['5 minutes later', 1080 + 60 + 725, 0],
  ])('a low that begins %s', (_, from, followed) => {
    expect(note(of(story(DAYS, from), 'lows'), 'exercise').followed.k).toBe(followed);
  });

  test('days on which nothing was written are no days without it', () => {
    const notes = [...[0, 2, 3, 5].map(written), ...DAYS.map(run)];
    expect(note(of(story(DAYS, 1380, { notes }), 'lows'), 'exercise').without).toEqual({ k: 0, n: 4 });
  });

  test('days that were hardly seen are not told free of lows; a low that was seen counts', () => {
    const without = [
      { day: 0, from: 360, to: 1440 },
      { day: 1, from: 400, to: 1300 },
    ];
    const lows = of(story(DAYS, 1380, { without }), 'lows');
    expect(lows).toMatchObject({ days: 27, events: 8 });
    expect(note(lows, 'exercise').without.n).toBe(19);
  });

  test('what begins before the first 6 AM is left out, and counted so', () => {
    const value = (minute: number, day: number) => (day === 0 && minute < 60 ? 62 : 120);
    expect(of(measuredValue(measured({ days: 7, value }).notedBefore), 'lows')).toMatchObject({
      events: 0,
      leftOut: 1,
    });
  });

  test('alarms are counted and never compared', () => {
    const notes = DAYS.flatMap((day): NoteOn[] => [run(day), { day, minute: 1370, kind: 'alarm', label: 'low' }]);
    const alarm = note(of(story(DAYS, 1380, { notes }), 'lows'), 'alarm');
    expect(alarm).toMatchObject({ verdict: 'follows', p: null, followed: { k: 8, n: 8 } });
  });

  test('of two days with it too little is said', () => {
    expect(note(of(story([3, 8], 1380), 'lows'), 'exercise')).toMatchObject({ verdict: 'too-few', p: null });
  });
});

test('fewer lows with a note than without is a hint too, with no order in time to ask for', () => {
  const rest = Array.from({ length: 28 }, (_, day) => day).filter((day) => !DAYS.includes(day));
  const notes = [...Array.from({ length: 28 }, (_, day) => written(day)), ...DAYS.map(run)];
  expect(note(of(story(rest, 1380, { notes }), 'lows'), 'exercise')).toMatchObject({
    withIt: { k: 0, n: 8 },
    without: { k: 20, n: 20 },
    verdict: 'hint',
  });
});

describe('what was noted on days of highs', () => {
  const high = (minutes: number, height: number) =>
    measuredValue(
      measured({
        days: 28,
        value: (minute, day) => (DAYS.includes(day) && minute >= 780 && minute < 780 + minutes ? height : 120),
        notes: Array.from({ length: 28 }, (_, day): NoteOn => {
          const pizza: NoteOn = { day, minute: 770, kind: 'meal', label: 'pizza', amount: 90, unit: 'g' };
          return DAYS.includes(day) ? pizza : written(day);
        }),
      }).notedBefore,
    );

  test('two hours beyond the outer limit, and no less', () => {
    expect(note(of(high(120, 260), 'very-highs'), 'food', 'pizza')).toMatchObject({
      followed: { k: 8, n: 8 },
      withIt: { k: 8, n: 8 },
      verdict: 'hint',
    });
    expect(of(high(115, 260), 'very-highs').dates).toEqual([]);
    expect(of(high(300, 240), 'very-highs').dates).toEqual([]);
  });

  test('more time above range, and more spread, than on the middle day', () => {
    const found = high(60, 200);
    for (const outcome of ['much-high', 'unsteady'] as const) {
      expect(of(found, outcome)).toMatchObject({ events: 0 });
      expect(note(of(found, outcome), 'food', 'pizza')).toMatchObject({
        withIt: { k: 8, n: 8 },
        without: { k: 0, n: 20 },
      });
    }
  });
});

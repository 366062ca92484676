import { describe, expect, test } from 'vitest';
import { measuredValue } from '../support/measuredValue.ts';
import type { NoteOn } from '../support/timeline.ts';
import { measured } from './logs.ts';

const SIX = 1080;
const run: NoteOn = { day: 0, minute: SIX, kind: 'exercise', minutes: 40, label: 'running, hard' };

/** 150, falling by 2 a minute for half an hour from 18:00, then 90; low from 02:00 to 03:00 of the second day. */
const value = (minute: number, day: number): number => {
  if (day === 1 && minute >= 120 && minute < 180) return 62;
  const after = day === 0 ? minute - SIX : 1;
  return after < 0 ? 150 : Math.max(90, 150 - 2 * after);
};
const sessionsOf = (notes: NoteOn[]) => measuredValue(measured({ days: 3, value, notes }).exercise);

describe('around exercise', () => {
  test('start, steepest fall over 20 minutes, lowest, and the night after', () => {
    const [session] = sessionsOf([run]);
    expect(session).toMatchObject({
      kind: 'running',
      effort: 'hard',
      minutes: 40,
      start: 150,
      steepest: 40,
      lowestDuring: 90,
      lowestSoon: 90,
      lowSoon: false,
      carbsFirst: 'none-noted',
    });
    expect(session!.untilMorning).toEqual({ minutes: 720, low: true, lowest: 62, lowestAfter: 480, lowMinutes: 60 });
  });

  test.each<[string, NoteOn[], string]>([
    ['food half an hour before', [{ day: 0, minute: SIX - 30, kind: 'meal', amount: 30, unit: 'g' }], 'extra'],
    ['food two hours before', [{ day: 0, minute: SIX - 120, kind: 'meal', amount: 30, unit: 'g' }], 'none-noted'],
    [
      'a meal with insulin half an hour before',
      [
        { day: 0, minute: SIX - 30, kind: 'meal', amount: 60, unit: 'g' },
        { day: 0, minute: SIX - 30, kind: 'insulin', amount: 5, unit: 'IU', label: 'rapid' },
      ],
      'meal',
    ],
  ])('%s', (_, notes, carbsFirst) => {
    expect(sessionsOf([run, ...notes])[0]!.carbsFirst).toBe(carbsFirst);
  });

  test('the night after the last day is not known', () => {
    expect(sessionsOf([{ ...run, day: 2 }])[0]!.untilMorning).toMatchObject({ minutes: 720, low: null });
  });
});

describe('bouts', () => {
  const bout = (minute: number, minutes: number): NoteOn => ({ day: 0, minute, kind: 'exercise', minutes });

  test('close together they are one session', () => {
    const [session, ...others] = sessionsOf([bout(600, 8), bout(612, 8), bout(630, 10)]);
    expect(others).toEqual([]);
    expect(session).toMatchObject({ minute: 600, minutes: 40 });
  });

  /** As a wrist sensor writes them: a thousand movements of two minutes are no thousand sessions. */
  test('a flood of short movements is counted, not shown', () => {
    const notes = Array.from(
      { length: 900 },
      (_, i): NoteOn => ({
        day: i % 3,
        minute: 300 + Math.floor(i / 3) * 3.7,
        kind: 'exercise',
        minutes: 2,
        label: 'walking',
      }),
    ).filter((_, i) => i % 7 < 2);
    const { exercise, noteLog } = measured({ days: 3, value, notes });
    expect(measuredValue(exercise).length).toBeLessThan(10);
    expect(measuredValue(noteLog).shortBouts).toBeGreaterThan(50);
  });

  test('without any minutes a note is taken at its word', () => {
    const { minutes: _, ...unknown } = run;
    expect(sessionsOf([unknown])[0]).toMatchObject({ minutes: null, lowestSoon: 90 });
  });
});

/** From the start to 6 in the morning: no low between two windows is passed over, and none is denied where an hour is missing. */
describe('from the start to 6 in the morning', () => {
  const steady = (lowFrom: number, lowTo: number, without: { day?: number; from: number; to: number }[] = []) =>
    measuredValue(
      measured({
        days: 3,
        value: (minute, day) => (day * 1440 + minute >= lowFrom && day * 1440 + minute < lowTo ? 62 : 120),
        notes: [run],
        without,
      }).exercise,
    )[0]!.untilMorning;

  test.each([
    ['while it lasts', SIX + 10, SIX + 30],
    ['three hours after it, before midnight', SIX + 220, SIX + 240],
    ['over midnight', 1430, 1450],
    ['just before 6', 1440 + 340, 1440 + 360],
  ])('a low %s counts', (_, from, to) => {
    expect(steady(from, to)).toMatchObject({ minutes: 720, low: true, lowest: 62, lowestAfter: from - SIX });
  });

  test.each([
    ['just before it', SIX - 30, SIX],
    ['at 6', 1440 + 360, 1440 + 400],
  ])('a low %s does not', (_, from, to) => {
    expect(steady(from, to).low).toBe(false);
  });

  test('an hour missing leaves it open; a low that was seen stays one', () => {
    const hole = (to: number) => [{ day: 0, from: SIX + 180, to }];
    expect(steady(0, 0, hole(SIX + 240)).low).toBe(false);
    expect(steady(0, 0, hole(SIX + 245)).low).toBeNull();
    expect(steady(1500, 1530, hole(SIX + 245)).low).toBe(true);
  });

  test('holes that add up to more than 30 % leave it open too', () => {
    const holes = [0, 1, 2, 3, 4].map((i) => ({ day: 0, from: SIX + 60 * i, to: SIX + 60 * i + 50 }));
    expect(steady(0, 0, holes).low).toBeNull();
  });

  test('who moves in the small hours has the same night before them', () => {
    const [session] = sessionsOf([{ ...run, day: 1, minute: 60 }]);
    expect(session!.untilMorning).toMatchObject({ minutes: 300, low: true });
  });
});

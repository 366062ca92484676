import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import type { GlucoseUnit } from '../../src/model/glucose.ts';
import type { NoteKind } from '../../src/model/input.ts';
import type { TargetSet } from '../../src/model/targets.ts';
import { NO_LOG_WORDS } from '../../src/occasions/words.ts';
import { targetSets } from '../../src/targets/index.ts';
import { many, type RunOptions, runOf, type Slot } from './runs.ts';

/** Two hours, three hours around a note and four days: ours. The limit of 250 mg/dL is that of Battelino 2019. */
/** Words of logbooks: one long-acting insulin. */
const words = { ...NO_LOG_WORDS, longActing: ['long-acting'] };

function found(slots: readonly Slot[], options: RunOptions = {}, set: TargetSet['id'] = 'adult', notes: Noted[] = []) {
  const run = runOf(slots, options);
  const start = run.days[0]!.start;
  const placed = notes.map(({ kind, minute, amount, label }) => ({
    kind,
    at: (start + minute * 60_000) as never,
    day: Math.floor(minute / 1440),
    minute: minute % 1440,
    timed: true,
    ...(amount === undefined ? {} : { amount }),
    ...(label === undefined ? {} : { label }),
  }));
  const { longHighs } = measure({ ...run, notes: placed as never }, targetSets[set], words);
  if (!longHighs.ok) throw new Error(longHighs.why);
  return longHighs.value;
}

interface Noted {
  kind: NoteKind;
  minute: number;
  amount?: number;
  label?: string;
}

/** So many minutes at a value, in five-minute slots. */
const held = (value: number, minutes: number) => many(value, minutes / 5);

describe('long highs', () => {
  test('two hours above the limit in one high, on end or not', () => {
    const broken = [...held(150, 60), ...held(260, 60), ...held(200, 60), ...held(300, 60), ...held(150, 60)];
    expect(found(broken).list).toMatchObject([{ minutes: 120, unbroken: 60, high: { minutes: 180, extreme: 300 } }]);
    expect(found([...held(150, 60), ...held(260, 115), ...held(150, 60)]).list).toEqual([]);
    expect(found([...held(150, 60), ...held(250, 600), ...held(150, 60)]).list).toEqual([]);
  });

  test('in pregnancy above 200 mg/dL or 11.1 mmol/L, each in its own unit', () => {
    const at = (value: number, usual: number, unit: GlucoseUnit) =>
      found([...held(usual, 60), ...held(value, 120), ...held(usual, 60)], { unit }, 'pregnancy-type-1').list.length;
    expect([at(200, 100, 'mg/dL'), at(201, 100, 'mg/dL')]).toEqual([0, 1]);
    expect([at(11.1, 6, 'mmol/L'), at(11.2, 6, 'mmol/L')]).toEqual([0, 1]);
  });

  test('notes from three hours before to the end count; a dose of 0 does not', () => {
    const slots = [...held(150, 300), ...held(300, 180), ...held(150, 120)];
    const near = (...notes: Noted[]) => {
      const [one] = found(slots, {}, 'adult', notes).list;
      return [one!.insulin, one!.food];
    };
    expect(near({ kind: 'insulin', minute: 120 }, { kind: 'meal', minute: 480 })).toEqual([1, 1]);
    expect(near({ kind: 'insulin', minute: 119 }, { kind: 'meal', minute: 481 })).toEqual([0, 0]);
    expect(near({ kind: 'insulin', minute: 300, amount: 0 })).toEqual([0, 0]);
    expect(near({ kind: 'insulin-rate', minute: 300, amount: 0.8 })).toEqual([0, 0]);
    expect(near({ kind: 'insulin', minute: 300, amount: 20, label: 'Long-acting' })).toEqual([0, 0]);
  });

  test('long-acting insulin and a pump’s rates are told apart from doses', () => {
    const day = [...held(150, 720), ...held(300, 180), ...held(150, 540)];
    const kinds = (...notes: Noted[]) => {
      const { insulinDays, basalDays, basal, top, list } = found([...day, ...day], {}, 'adult', notes);
      return [insulinDays, basalDays, basal, top.map(({ insulin, basal }) => [insulin, basal]), list[0]!.basal];
    };
    const long = { kind: 'insulin', minute: 700, amount: 20, label: 'Long-acting' } as const;
    const rate = { kind: 'insulin-rate', minute: 700, amount: 0.8 } as const;
    const dose = { kind: 'insulin', minute: 1440 + 700, amount: 4, label: 'rapid' } as const;
    // Days of equal time stand in order of the calendar.
    expect(kinds(long)).toEqual([
      0,
      1,
      'long-acting',
      [
        [false, true],
        [false, false],
      ],
      1,
    ]);
    expect(kinds(rate)).toEqual([
      0,
      1,
      'rates',
      [
        [false, true],
        [false, false],
      ],
      1,
    ]);
    expect(kinds(long, rate, dose)).toEqual([
      1,
      1,
      'both',
      [
        [false, true],
        [true, false],
      ],
      2,
    ]);
    expect(kinds(dose, { ...rate, amount: 0 })).toEqual([
      1,
      0,
      'none',
      [
        [false, false],
        [true, false],
      ],
      0,
    ]);
  });

  test('at most four days with an hour or more of it, most first, with what is noted on them', () => {
    const day = (minutes: number) => [...held(150, 720), ...held(300, minutes), ...held(150, 720 - minutes)];
    const notes: Noted[] = [
      { kind: 'insulin', minute: 2 * 1440 + 10 },
      { kind: 'meal', minute: 10 },
    ];
    const { top, insulinDays, foodDays, days, mostInDay } = found(
      [60, 300, 120, 55, 240, 180].flatMap(day),
      {},
      'adult',
      notes,
    );
    expect(top.map(({ date, minutes }) => [date, minutes])).toEqual([
      ['2026-03-03', 300],
      ['2026-03-06', 240],
      ['2026-03-07', 180],
      ['2026-03-04', 120],
    ]);
    expect(top.map(({ insulin }) => insulin)).toEqual([false, false, false, true]);
    expect({ insulinDays, foodDays, days, mostInDay }).toEqual({
      insulinDays: 1,
      foodDays: 1,
      days: 6,
      mostInDay: 300,
    });
    expect(found([55, 60].flatMap(day)).top).toHaveLength(1);
  });

  test('a run ends at a gap, and a reading above what the sensor shows is beyond any level', () => {
    const gap = [...held(300, 60), ...many(null, 12), ...held(300, 90)];
    expect(found(gap).unbroken).toBe(90);
    expect(found(many({ native: Number.NaN, limit: 1 }, 30)).unbroken).toBe(150);
  });
});

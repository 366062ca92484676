import { describe, expect, test } from 'vitest';
import { MGDL_PER_MMOL } from '../../src/units.ts';
import { measuredValue } from '../support/measuredValue.ts';
import type { NoteOn } from '../support/timeline.ts';
import { measured } from './logs.ts';

const NOON = 720;

/** 100 mg/dL with a triangle of 100 that peaks 70 minutes after noon and is gone at 170. */
const bump = (minute: number): number => {
  const after = minute - NOON;
  if (after <= 0 || after >= 170) return 100;
  return after <= 70 ? 100 + (after / 70) * 100 : 200 - ((after - 70) / 100) * 100;
};

const mealsOf = (notes: NoteOn[], more: Partial<Parameters<typeof measured>[0]> = {}) =>
  measuredValue(measured({ days: 2, value: bump, notes, ...more }).meals);

const lunch: NoteOn = { day: 0, minute: NOON, kind: 'meal', amount: 50, unit: 'g', label: 'rice' };

describe('after a meal', () => {
  test('baseline, peak, increment, time to peak, minutes above range and area of a known curve', () => {
    const [meal] = mealsOf([lunch]);
    expect(meal).toMatchObject({ slot: 'midday', foods: ['rice'], carbs: 50, unusable: [] });
    const { course } = meal!;
    expect(course).toMatchObject({ baseline: 100, peak: 200, increment: 100, minutesToPeak: 70, peakLimit: false });
    expect(course!.oneHour).toBeCloseTo(bump(NOON + 60), 9);
    expect(course!.twoHours).toBe(150);
    // Above 180 from 56 to 90 minutes: readings at 60, 65 … 85.
    expect(course!.highMinutes).toBe(6 * 5);
    expect(course!.area).toBeCloseTo((100 * 170) / 2, 6);
    expect(course!.returnMinutes).toBe(160);
    expect(course!.low).toBe(false);
  });

  /** The worked example of the incremental area, every fifteen minutes (see tests/stats/area.test.ts): 100.0 mmol/L min. */
  test('the worked example through the whole way, in mmol/L', () => {
    const curve: Record<number, number> = {
      0: 5,
      15: 6,
      30: 7.5,
      45: 7,
      60: 6,
      75: 5.25,
      90: 4.5,
      105: 4.65,
      120: 4.8,
    };
    const value = (minute: number) => curve[minute - NOON] ?? (minute < NOON ? 5 : 4.8);
    const [meal] = measuredValue(measured({ days: 2, every: 15, unit: 'mmol/L', value, notes: [lunch] }).meals);
    expect(meal!.course!.minutesToPeak).toBe(30);
    expect(meal!.course!.area / MGDL_PER_MMOL).toBeCloseTo(100, 6);
  });

  test('a peak at the sensor’s limit is a bound', () => {
    const value = (minute: number) => (minute === NOON + 60 ? { native: 400, limit: 1 as const } : bump(minute));
    expect(mealsOf([lunch], { value })[0]!.course).toMatchObject({ peak: 400, peakLimit: true });
  });
});

describe('not compared', () => {
  test.each<[string, NoteOn[], string[], object?]>([
    ['a gap', [lunch], ['gap'], { without: [{ from: NOON + 30, to: NOON + 100 }] }],
    ['nothing before', [lunch], ['gap'], { without: [{ from: NOON - 30, to: NOON + 5 }] }],
    ['other food an hour later', [lunch, { ...lunch, minute: NOON + 60 }], ['overlap']],
    ['a coffee an hour later', [lunch, { ...lunch, minute: NOON + 60, amount: 2 }], []],
    ['other food three hours later', [lunch, { ...lunch, minute: NOON + 180 }], []],
    ['a low at the start', [lunch], ['low-at-start'], { value: (minute: number) => (minute < NOON + 5 ? 60 : 120) }],
    ['food for a low', [{ ...lunch, label: '3 x glucose tablets' }], ['low-at-start']],
    ['under 10 g', [{ ...lunch, amount: 4 }], ['small']],
    ['before exercise', [lunch, { day: 0, minute: NOON + 40, kind: 'exercise', minutes: 30 }], ['exercise']],
  ])('%s', (_, notes, unusable, more = {}) => {
    expect(mealsOf(notes, more)[0]!.unusable).toEqual(unusable);
  });
});

describe('what stands beside a meal', () => {
  test.each<[string, number | null, string]>([
    ['none', null, 'none-noted'],
    ['a quarter of an hour before', -15, 'before'],
    ['five minutes before', -5, 'with'],
    ['a quarter of an hour after', 15, 'after'],
    ['an hour and a half before', -90, 'none-noted'],
  ])('insulin noted: %s', (_, minutes, when) => {
    const notes: NoteOn[] =
      minutes === null
        ? []
        : [{ day: 0, minute: NOON + minutes, kind: 'insulin', amount: 5, unit: 'IU', label: 'rapid' }];
    expect(mealsOf([lunch, ...notes])[0]!.insulin.when).toBe(when);
  });

  test('long-acting insulin belongs to no meal and is no correction', () => {
    const notes: NoteOn[] = [{ day: 0, minute: NOON, kind: 'insulin', amount: 18, unit: 'IU', label: 'long-acting' }];
    expect(mealsOf([lunch, ...notes])[0]!.insulin.when).toBe('none-noted');
    expect(measuredValue(measured({ days: 2, value: bump, notes }).corrections)).toEqual([]);
  });

  test('notes within a quarter of an hour are one meal, and their grams one sum', () => {
    const meals = mealsOf([lunch, { ...lunch, minute: NOON + 10, label: 'yoghurt', amount: 12 }]);
    expect(meals).toHaveLength(1);
    expect(meals[0]).toMatchObject({ foods: ['rice', 'yoghurt'], carbs: 62 });
  });

  test('no grams noted is no number, never 0', () => {
    const { amount: _, unit: __, ...bare } = lunch;
    expect(mealsOf([bare])[0]!.carbs).toBeNull();
  });

  test('a note made while glucose was rising already came late', () => {
    expect(mealsOf([{ ...lunch, minute: NOON + 45 }])[0]!.late).toBe(true);
    expect(mealsOf([lunch])[0]!.late).toBe(false);
  });
});

test('insulin without food: change at 2 and 4 hours', () => {
  const value = (minute: number) => Math.max(120, 240 - Math.max(0, minute - NOON) * 0.5);
  const notes: NoteOn[] = [{ day: 0, minute: NOON, kind: 'insulin', amount: 3, unit: 'IU', label: 'rapid' }];
  const [correction] = measuredValue(measured({ days: 2, value, notes }).corrections);
  expect(correction).toMatchObject({ start: 240, change2h: -60, change4h: -120, low: false, unusable: [] });
});

import { expect, test } from 'vitest';
import { dayAlong, occasionAlong, profileAlong, usualAlong } from '../../src/charts/along.ts';
import { bandAt, bandOfHeight } from '../../src/charts/bandAt.ts';
import type { ChartContext } from '../../src/charts/context.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { MgPerDl } from '../../src/model/glucose.ts';
import type { ModalBin } from '../../src/model/measures.ts';
import { profileOf } from '../../src/occasions/profile.ts';
import { targetSets } from '../../src/targets/index.ts';
import { wordsOf } from '../support/story.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

const targets = targetSets.adult;
const inUnit = (unit: 'mg/dL' | 'mmol/L'): ChartContext => {
  const speaker = speakerOf(wordsOf(), { unit, voice: 'clinic', targets });
  return { speaker, targets, native: unit, text: 8.5 };
};
const context = inUnit('mg/dL');
const plot = { left: 20, top: 2, width: 240, height: 50 };
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const dayOf = (days: DaysOf, minutes?: number): string[] =>
  dayAlong(timelineOf({ days: 1, ...days }), 0, plot, 'Mon', context, minutes)[0]?.says.map(plain) ?? [];

test.each<[string, DaysOf, number | undefined, number, string]>([
  [
    'an hour by its two ends, each with its band',
    { value: (m) => (m % 60 < 30 ? 60 : 200) },
    undefined,
    2,
    '2 AM · lowest 60 mg/dL (Low) · highest 200 mg/dL (High)',
  ],
  ['one reading at its own time', { value: () => 90, every: 7 }, 5, 1, '12:07 AM · 90 mg/dL (In range)'],
  ['several that read the same as one', { value: () => 53 }, undefined, 0, 'midnight · 53 mg/dL (Very low)'],
  ['a pause as a pause', { value: () => 90, without: [{ from: 180, to: 240 }] }, undefined, 3, '3 AM · no readings'],
  [
    'notes at their hour',
    { value: () => 90, notes: [{ day: 0, minute: 735, kind: 'meal', amount: 40, unit: 'g', label: 'rice' }] },
    undefined,
    12,
    'noon · 90 mg/dL (In range) · 12:15 PM food 40 g rice',
  ],
  // At the limits of the range a value is within it (Holt 2021, Diabetes Care 44:2589-2625, table 1).
  ['the upper limit as within the range', { value: () => 180 }, undefined, 0, 'midnight · 180 mg/dL (In range)'],
])('of a day is read off: %s', (_, days, minutes, at, expected) => {
  expect(dayOf(days, minutes)[at]).toBe(expected);
});

test('what is read off lies where it is drawn, from end to end of the clock', () => {
  const [along] = dayAlong(timelineOf({ days: 1, value: () => 90 }), 0, plot, 'Mon', context, 5);
  expect(along).toMatchObject({ left: 20, right: 260, top: 2, bottom: 52, name: 'Mon' });
  expect(along!.says).toHaveLength(288);
});

test('a day that holds nothing is not read', () => {
  const timeline = timelineOf({ days: 3, value: (_, day) => (day === 1 ? null : 90) });
  expect(dayAlong(timeline, 1, plot, 'Tue', context)).toEqual([]);
});

test('a bound at a limit lies beyond it: "below 70" is low', () => {
  const timeline = timelineOf({ days: 1, value: () => ({ native: 70, limit: -1 }) });
  expect(bandAt(timeline, 0, context)).toBe('low');
  const above = timelineOf({ days: 1, value: () => ({ native: 250, limit: 1 }) });
  expect(bandAt(above, 0, context)).toBe('very-high');
});

test.each<['mg/dL' | 'mmol/L', number, string]>([
  ['mg/dL', 180.4, 'in-range'],
  ['mg/dL', 180.6, 'high'],
  ['mg/dL', 69.6, 'in-range'],
  ['mmol/L', 3.86 * 18.0156, 'in-range'],
  ['mmol/L', 3.84 * 18.0156, 'low'],
])('the band of a middle never differs from the number that is printed: %s %f', (unit, mgdl, band) => {
  expect(bandOfHeight(mgdl as MgPerDl, inUnit(unit))).toBe(band);
});

test('the usual day is read off with its middle, its halves and its outer curves, and says where it cannot', () => {
  const bin = { p5: 80, p25: 110, p50: 190, p75: 230, p95: 260, n: 40, days: 14 };
  const bins: ModalBin[] = [
    { minute: 0, ...bin },
    { minute: 720, ...bin, p5: null, p25: null, p50: null, p75: null, p95: null },
  ];
  const modal = { binMinutes: 720, bins, raw: bins };
  expect(usualAlong(modal, true, plot, 'usual', context)[0]!.says.map(plain)).toEqual([
    'midnight · middle 190 mg/dL (High) · half of the readings from 110 mg/dL to 230 mg/dL · nine in ten from 80 mg/dL to 260 mg/dL',
    'noon · too few readings',
  ]);
  expect(usualAlong(modal, false, plot, 'usual', context)[0]!.says[0]).not.toContain('nine in ten');
});

test('occasions laid over one another are read off by the time from their note, each point where it is drawn', () => {
  const timeline = timelineOf({ days: 4, value: (m) => (m < 720 ? 100 : 200) });
  const anchors = timeline.days.slice(0, 3).map(({ start }) => start + 720 * 60_000);
  const profile = profileOf(timeline, anchors, -60, 120, 60);
  const [along] = profileAlong(profile, plot, 'lunch', context);
  expect(along!.says.map(plain)).toEqual([
    '1 h before · middle of 3 100 mg/dL (In range) · half of them from 100 mg/dL to 100 mg/dL',
    expect.stringMatching(/^at the start · middle of 3 /),
    '1 h after · middle of 3 200 mg/dL (High) · half of them from 200 mg/dL to 200 mg/dL',
    '2 h after · middle of 3 200 mg/dL (High) · half of them from 200 mg/dL to 200 mg/dL',
  ]);
  // Four points, 80 apart, the first on the left edge: each holds half of that to both sides.
  expect(along).toMatchObject({ left: -20, right: 300 });
  expect(profileAlong(profileOf(timeline, anchors.slice(0, 1), 0, 60, 60), plot, '', context)[0]!.says[0]).toBe(
    'at the start · one curve with readings, too few for a middle',
  );
});

test('one occasion is read off by the reading next to each point, and a pause is no reading', () => {
  const timeline = timelineOf({ days: 1, value: () => 60, without: [{ from: 600, to: 1000 }] });
  const anchor = timeline.days[0]!.start + 540 * 60_000;
  const [along] = occasionAlong(timeline, anchor, { from: -60, to: 180 }, 60, plot, 'walk', context);
  expect(along!.says.map(plain)).toEqual([
    '1 h before · 60 mg/dL (Low)',
    'at the start · 60 mg/dL (Low)',
    '1 h after · 60 mg/dL (Low)',
    '2 h after · no readings',
    '3 h after · no readings',
  ]);
});

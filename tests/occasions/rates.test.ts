import { expect, it } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { held } from '../samples/stories.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { logWords } from './logs.ts';

/** Two invented weeks of a pump: background every five minutes, and no insulin with or without food. */
const log = (column: string, value: (i: number) => string): string => {
  const lines = [`Time;Sensor glucose (mg/dL);Carbs (g);${column}`];
  for (let i = 0; i < 14 * 288; i++) {
    const at = new Date(Date.UTC(2026, 0, 1) + i * 300_000).toISOString();
    const meal = i % 288 === 144 ? '45' : '';
    lines.push(`${at.slice(0, 10)} ${at.slice(11, 16)};${110 + Math.round(30 * Math.sin(i / 30))};${meal};${value(i)}`);
  }
  return lines.join('\n');
};

it.each([
  ['a rate', 'Basal rate (U/h)', (i: number) => (0.5 + ((i * 7) % 10) / 10).toFixed(2)],
  ['small amounts', 'Basal insulin (U)', (i: number) => (((i * 7) % 5) / 100).toFixed(2)],
])('background insulin told as %s counts as no dose', (_, column, value) => {
  const bytes = new TextEncoder().encode(log(column, value));
  const settings = { targets: 'adult', today: '2026-02-01', period: { days: 14 }, person: {}, logWords } as const;
  const analysis = held(analyse([{ name: 'pump.csv', bytes }], settings, 'test'));
  const { notes } = analysis.timeline;
  expect(notes.filter(({ kind }) => kind === 'insulin-rate').length).toBeGreaterThan(1000);
  expect(notes.filter(({ kind }) => kind === 'insulin')).toEqual([]);
  const { noteLog, meals, corrections } = analysis.measures;
  expect(measuredValue(noteLog).byKind.map(({ kind }) => kind)).toEqual(['meal']);
  expect(measuredValue(meals).every(({ insulin }) => insulin.when === 'none-noted')).toBe(true);
  expect(corrections.ok ? corrections.value : []).toEqual([]);
});

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { logWords } from '../occasions/logs.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { analysedSource } from './sources.ts';

type Course = Record<
  'baseline' | 'peak' | 'minutesToPeak' | 'highMinutes' | 'area' | 'oneHour' | 'twoHours',
  number | null
>;
type AfterMeal = { n: number; median: number; below: number };

/** What meals.py worked out from the same diaries by itself. */
interface Figures {
  from: string;
  to: string;
  set: 'adult' | 'older' | 'pregnancy-type-1';
  meals: { at: string; grams: number | null; compared: boolean; course: Course | null }[];
  pregnancy: Record<'oneHour' | 'twoHours', AfterMeal> | null;
  topDays: { date: string; minutes: number }[];
}

const folder = new URL('./meals/', import.meta.url);
const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));
const load = (source: string): Figures => JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));

const near = (found: number | null, expected: number | null, what: string): void => {
  if (found === null || expected === null) expect(found, what).toBe(expected);
  else expect(Math.abs(found - expected), what).toBeLessThan(1e-6 * Math.max(1, Math.abs(expected)));
};

describe.each(sources)('%s, after noted meals, worked out twice', (source) => {
  const figures = load(source);
  const { measures } = analysedSource(source, figures, { logWords });

  test('each meal: whether it is compared, its baseline, peak, area, and the values 1 and 2 hours after', () => {
    const found = measuredValue(measures.meals).filter(({ inferred }) => !inferred);
    const clock = (minute: number) =>
      `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
    expect(found.map(({ date, minute }) => `${date} ${clock(minute)}`)).toEqual(figures.meals.map(({ at }) => at));
    for (const [i, expected] of figures.meals.entries()) {
      const { carbs, unusable, course } = found[i]!;
      expect([carbs, unusable.length === 0, course !== null], expected.at).toEqual([
        expected.grams,
        expected.compared,
        expected.course !== null,
      ]);
      for (const [name, value] of Object.entries(expected.course ?? {}))
        near(course![name as keyof Course], value, `${expected.at} ${name}`);
    }
  });

  test('the days with most time very high', () => {
    const { top } = measuredValue(measures.longHighs);
    expect(top.map(({ date }) => date)).toEqual(figures.topDays.map(({ date }) => date));
    for (const [i, { minutes }] of figures.topDays.entries()) near(top[i]!.minutes, minutes, `top day ${i}`);
  });

  // American Diabetes Association, Standards of Care, section 15: below 140 mg/dL after 1 hour, below 120 after 2.
  test.skipIf(figures.pregnancy === null)('values 1 and 2 hours after meals beside the published goals', () => {
    const found = measuredValue(measures.pregnancy);
    for (const [name, goal] of [
      ['oneHour', 140],
      ['twoHours', 120],
    ] as const) {
      const { n, median, below } = figures.pregnancy![name];
      expect(found[name]).toMatchObject({ n, below, goal });
      near(found[name].median, median, name);
    }
  });
});

/** Needs Python 3; without it the committed figures are taken as they are. */
test.skipIf(spawnSync('python3', ['--version']).status !== 0)('the figures are what the script gives', () => {
  const { from, to, set } = load('pregnancy');
  const script = new URL('meals.py', import.meta.url).pathname;
  const args = [script, 'pregnancy', '--from', from, '--to', to, '--set', set];
  expect(JSON.parse(spawnSync('python3', args, { encoding: 'utf8' }).stdout)).toEqual(load('pregnancy'));
});

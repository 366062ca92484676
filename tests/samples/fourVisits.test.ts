import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { visitOf } from '../../src/papers/visitOf.ts';
import { readAgreed } from '../../src/schemas/agreed.ts';
import { readVisit } from '../../src/schemas/readVisit.ts';
import { logWords } from '../occasions/logs.ts';
import { analysisOf } from '../support/story.ts';
import { held, inputsIn, sampleData } from './stories.ts';

const folder = join(sampleData, 'four-visits');
const text = (name: string): string => readFileSync(join(folder, name), 'utf8');

/**
 * What the rows say by themselves, counted here without the program: shares of readings, which all stand for a quarter of an hour
 * (Battelino 2019: 54, 70, 180), and days with football from whose start to 12 hours later a reading lies below 70 mg/dL, which is a
 * low at this interval.
 */
function counted(readings: string, logbook: string) {
  const values = text(readings)
    .trim()
    .split('\n')
    .slice(1)
    .map((row) => row.split(','))
    .filter(([, value]) => /^\d+$/.test(value!))
    .map(([at, value]) => ({ at: Date.parse(`${at!.replace(' ', 'T')}Z`), mgdl: Number(value) }));
  const share = (test: (mgdl: number) => boolean) => values.filter(({ mgdl }) => test(mgdl)).length / values.length;
  const football = text(logbook)
    .split('\n')
    .filter((row) => /football/i.test(row))
    .map((row) => Date.parse(`${row.slice(0, 16).replace(' ', 'T')}Z`));
  const low = football.filter((start) =>
    values.some(({ at, mgdl }) => at >= start && at < start + 12 * 3_600_000 && mgdl < 70),
  );
  return {
    inRange: share((mgdl) => mgdl >= 70 && mgdl <= 180),
    low: share((mgdl) => mgdl < 70),
    high: share((mgdl) => mgdl > 180),
    mean: values.reduce((sum, { mgdl }) => sum + mgdl, 0) / values.length,
    count: { k: low.length, n: football.length },
  };
}

const labels = {
  goal: ['Goals we agreed'],
  step: ['My next step'],
  helper: ['Who helps'],
  nextVisit: ['Next date'],
  sure: ['How sure am I that I can do it? (0 not at all, 10 completely)'],
  question: ['My question'],
  remarks: ['Remarks'],
  interpretation: ['Interpretation'],
  by: ['Written by'],
  on: ['Written on'],
};

describe.each([
  ['first', '2026-02-01', '2026-02-03'],
  ['second', '2026-03-29', '2026-03-31'],
  ['third', '2026-05-31', '2026-06-02'],
])('what the %s visit left', (nth, last, today) => {
  const name = `HL-131-visit-${last}.json`;
  const read = readVisit(text(`earlier/${name}`), name);
  if (!('visit' in read)) throw new Error(JSON.stringify(read));
  const { visit } = read;

  test('is what its exports give, but for the version and the hash of that time', () => {
    const inputs = inputsIn(join(folder, 'earlier'), new RegExp(`^${nth}-.*csv$`));
    const person = { code: 'HL-131', clinic: 'Harbour Lane clinic (invented)' };
    const settings = {
      targets: 'adult',
      zone: 'Europe/Lisbon',
      period: { days: 28 },
      today,
      person,
      logWords,
    } as const;
    const agreed = readAgreed(text(`earlier/${nth}-agreed.txt`), labels);
    if (!agreed.ok) throw new Error(agreed.problems.join());
    const { origin: now, ...again } = visitOf(held(analyse(inputs, settings, 'test')), name, agreed.agreed);
    const { origin: then, ...left } = visit;
    expect(left).toEqual(again);
    expect(then.on).toBe(now.on);
  });

  test('has the shares and the mean of its rows, but for those beyond the sensor and of an hour that did not exist', () => {
    const { inRange, low, high, mean } = counted(`earlier/${nth}-readings.csv`, `earlier/${nth}-logbook.csv`);
    const { numbers } = visit;
    // Ten of 2,656 rows are such, all in March.
    const within = nth === 'second' ? 0.004 : 1e-9;
    expect(Math.abs(numbers.inRangeShare!.value - inRange)).toBeLessThan(within);
    expect(Math.abs(numbers.lowShare!.value - low)).toBeLessThan(within);
    expect(Math.abs(numbers.highShare!.value - high)).toBeLessThan(within);
    expect(Math.abs(numbers.meanMgPerDl!.value - mean)).toBeLessThan(nth === 'second' ? 1 : 1e-9);
  });
});

test('what was agreed in May is told with the counts of the rows, then and now', async () => {
  const then = counted('earlier/third-readings.csv', 'earlier/third-logbook.csv');
  const now = counted('readings.csv', 'logbook.csv');
  expect([then.count, now.count]).toEqual([
    { k: 9, n: 10 },
    { k: 3, n: 10 },
  ]);
  const { measures } = await analysisOf('four-visits');
  // 9 of 10 and 3 of 10: p 0.020 by Fisher's exact test, two-sided (by hand from the hypergeometric distribution).
  expect(measures.lastTime).toMatchObject({
    value: {
      agreed: { step: 'food before football and at bedtime' },
      measure: { of: 'after-note', before: then.count, now: now.count, verdict: 'more-than-noise' },
    },
  });
  const { mean, timeInBands } = measures;
  expect(mean.ok && mean.value.mgdl.value).toBeCloseTo(now.mean, 9);
  expect(timeInBands.ok && timeInBands.value.exclusive['in-range'].value).toBeCloseTo(now.inRange, 12);
});

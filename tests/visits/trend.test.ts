import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chance } from '../../src/stats/chance.ts';
import { addDays } from '../../src/time/calendar.ts';
import { occasionsThenAndNow } from '../../src/visits/counts.ts';
import { trendOf } from '../../src/visits/trend.ts';
import { simulated, WORLDS } from '../support/simulatedDays.ts';
import { trendOften } from '../support/trendOften.ts';

const [even, usual] = [WORLDS[0]!, WORLDS[1]!];
const course = (shifts: number[], days = 28) =>
  shifts.map((shift, i) => simulated(even, days, shift, addDays('2026-01-05', 60 * i), chance(7 + i)));

interface Figure {
  visits: number;
  days: number;
  world: string;
  shift: number;
  calledPercent: number;
}
const { figures } = JSON.parse(readFileSync(new URL('./simulated.json', import.meta.url), 'utf8')) as {
  figures: Figure[];
};

describe('one line through time in range', () => {
  test('is not drawn through two visits, nor through visits of few days', () => {
    expect(trendOf(course([0, -0.3]))).toEqual({ case: 'none', why: 'two-visits' });
    expect(trendOf(course([0, -0.1, -0.2], 8))).toEqual({ case: 'none', why: 'few-days' });
  });

  test('a large and steady rise is told, a fall too, and what stays is not', () => {
    const rise = trendOf(course([0.2, 0.1, 0, -0.1]));
    expect(rise).toMatchObject({ case: 'line', verdict: 'more-than-noise', visits: 4 });
    expect(rise.case === 'line' && rise.low).toBeGreaterThan(0);
    const fall = trendOf(course([-0.1, 0, 0.1, 0.2]));
    expect(fall.case === 'line' && [fall.verdict, fall.high < 0]).toEqual(['more-than-noise', true]);
    expect(trendOf(course([0, 0, 0, 0]))).toMatchObject({ verdict: 'not-told-apart' });
  });

  test('one visit that stands off the line widens it', () => {
    const steady = trendOf(course([0.1, 0, -0.1]));
    const jumping = trendOf(course([0.1, 0.3, -0.1]));
    const width = (trend: typeof steady) => (trend.case === 'line' ? trend.high - trend.low : 0);
    expect(width(jumping)).toBeGreaterThan(1.5 * width(steady));
  });

  test('false alarms, here and in the larger simulation, stay under 5 in 100; power is as the paper says', () => {
    expect(trendOften(usual, { visits: 4, days: 28, shift: 0 }, 150).called).toBeLessThanOrEqual(0.05);
    for (const { shift, calledPercent } of figures) if (shift === 0) expect(calledPercent).toBeLessThanOrEqual(5);
    const power = figures.find(
      ({ visits, days, world, shift }) => visits === 4 && days === 28 && world === usual.what && shift === -0.12,
    );
    const page = readFileSync(new URL('../../src/pages/visitByVisit.ts', import.meta.url), 'utf8');
    expect(page).toContain(`const POWER = ${Math.round(power!.calledPercent)};`);
  });
});

/** Fisher's exact test of two shares: tea-tasting and other tables are checked in tests/stats. */
test.each([
  [{ k: 9, n: 10 }, { k: 3, n: 10 }, 'more-than-noise', undefined],
  [{ k: 5, n: 9 }, { k: 1, n: 8 }, 'not-told-apart', undefined],
  [{ k: 2, n: 3 }, { k: 0, n: 2 }, 'cannot-tell', 'few'],
  [{ k: 5, n: 9 }, { k: 0, n: 0 }, 'cannot-tell', 'none'],
  [{ k: 5, n: 9 }, null, 'cannot-tell', 'none'],
] as const)('%j then and %j now', (then, now, verdict, why) => {
  const found = occasionsThenAndNow(then, now);
  expect([found.verdict, found.why]).toEqual([verdict, why]);
});

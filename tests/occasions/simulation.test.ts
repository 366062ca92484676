import { expect, test } from 'vitest';
import type { Comparison } from '../../src/model/occasions.ts';
import { simulatedLog, type Truth } from './logs.ts';

/**
 * Four weeks of notes, simulated many times over (see logs.ts: days that hang together, times above range heaped at 0,
 * about 13 comparisons a report). Rates measured over 2,000 reports stand beside each bound.
 */
type Log = ReturnType<typeof simulatedLog>;

function share(reports: number, truth: Truth, hit: (log: Log) => boolean): number {
  let hits = 0;
  for (let i = 0; i < reports; i++) if (hit(simulatedLog(i * 7919 + 1, truth))) hits++;
  return hits / reports;
}

const hints = (comparisons: readonly Comparison[], id: Comparison['id'], sign: 1 | -1): boolean =>
  comparisons.some((one) => one.id === id && one.verdict === 'hint' && sign * one.difference!.value > 0);

const anyHint = ({ comparisons, before }: Log): boolean =>
  [...comparisons, ...before.flatMap(({ notes }) => notes)].some(({ verdict }) => verdict === 'hint');

test('with nothing there, at most 5 % of reports show any hint, beside any of six outcomes too (4.4 % measured)', () => {
  expect(share(500, {}, anyHint)).toBeLessThanOrEqual(0.05);
});

test('exercise that takes 50 mg/dL is the note before lows in a third of reports, never the other way (45 % measured)', () => {
  const story = (sign: 1 | -1) =>
    share(120, { exercise: 50 }, ({ before }) =>
      before[0]!.notes.some(
        ({ id, verdict, withIt, without }) =>
          id === 'exercise' && verdict === 'hint' && sign * (withIt.k / withIt.n - without.k / without.n) > 0,
      ),
    );
  expect(story(1)).toBeGreaterThan(0.3);
  expect(story(-1)).toBe(0);
});

test('a food that adds 2 hours above range is found in 4 of 5 reports, always with the right sign (90 % measured)', () => {
  expect(share(120, { food: 120 }, ({ comparisons: all }) => hints(all, 'food', 1))).toBeGreaterThan(0.8);
  expect(
    share(120, { food: 120 }, ({ comparisons: all }) =>
      all.some((one) => one.a.name === 'rice' && hints([one], 'food', -1)),
    ),
  ).toBe(0);
});

test('exercise that takes 50 mg/dL from the evening and night is found in 9 of 10 reports, never the other way (96 % measured)', () => {
  expect(share(120, { exercise: 50 }, ({ comparisons: all }) => hints(all, 'exercise-or-rest', -1))).toBeGreaterThan(
    0.9,
  );
  expect(share(120, { exercise: 50 }, ({ comparisons: all }) => hints(all, 'exercise-or-rest', 1))).toBe(0);
});

test('extra food first that gives 60 mg/dL back is found in a third of reports at about 7 sessions a side (43 % measured)', () => {
  const truth = { exercise: 60, extraFood: 60 };
  expect(share(120, truth, ({ comparisons: all }) => hints(all, 'extra-carbs', 1))).toBeGreaterThan(0.3);
  expect(share(120, truth, ({ comparisons: all }) => hints(all, 'extra-carbs', -1))).toBe(0);
});

test('under three days on a side nothing is compared, however far apart', () => {
  for (const one of simulatedLog(5, { food: 180 }).comparisons) {
    const days = (side: Comparison['a']) => new Set(side.occasions.map(({ date }) => date)).size;
    expect(one.verdict === 'too-few').toBe(Math.min(days(one.a), days(one.b)) < 3);
    if (one.verdict === 'too-few') expect(one).toMatchObject({ p: null, difference: null });
  }
});

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { NoteBefore, Outcome } from '../../src/model/notedBefore.ts';
import type { Times } from '../../src/model/occasions.ts';
import { logWords } from '../occasions/logs.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { analysedSource } from './sources.ts';

type Part = { noted: number; median: number } | null;
interface Sides {
  withIt: Times;
  without: Times;
  p: number | null;
}
interface Before {
  dates: string[];
  exercise: Sides;
  weekend: Sides;
}

/** What orders.py worked out from the same diaries by itself. */
interface Figures {
  from: string;
  to: string;
  set: 'adult' | 'older' | 'pregnancy-type-1';
  due: LocalDate | null;
  fixed: Record<'fasting' | 'bedtime', { date: string; mgdl: number }[]> &
    Record<'fastingMedian' | 'bedtimeMedian', number | null>;
  insulin: {
    days: number;
    noted: number;
    perDay: { date: string; units: number }[];
    median: number;
    longActing: Part;
    others: Part;
  };
  /** Lows and hours. */
  lined: Record<'during' | 'without', [number, number]> & Record<'exercise' | 'bedtime', [number, number][]>;
  highs: Record<'veryHigh' | 'muchHigh', Before>;
  pregnancy: {
    weeks: Record<string, number | string | null>[];
    fasting: { n: number; median: number; below: number; goal: number };
  } | null;
}

const folder = new URL('./orders/', import.meta.url);
const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));
const load = (source: string): Figures => JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));

/** Sums are added up in another order: nine digits are compared. */
const DIGITS = 9;
const near = (value: number | null, expected: number | null): void => {
  if (expected === null || value === null) expect(value).toBe(expected);
  else expect(value).toBeCloseTo(expected, DIGITS - 3);
};

describe.each(sources)('%s, where reading orders look, worked out twice', (source) => {
  const figures = load(source);
  const { due } = figures;
  const { measures } = analysedSource(source, figures, { logWords, ...(due === null ? {} : { dueDate: due }) });

  test.each(['fasting', 'bedtime'] as const)('%s values and their middle', (of) => {
    const found = measuredValue(measures.fixedTimes);
    const expected = figures.fixed[of];
    expect(found[of].map(({ date }) => date)).toEqual(expected.map(({ date }) => date));
    for (const [i, { mgdl }] of expected.entries()) near(found[of][i]!.mgdl, mgdl);
    near(found[`${of}Median`], figures.fixed[`${of}Median`]);
  });

  test('insulin noted a day, long-acting apart', () => {
    const { days, noted, median, longActing, others, perDay } = measuredValue(measures.insulinNoted);
    const { perDay: units, ...expected } = figures.insulin;
    expect({ days, noted, median, longActing, others }).toEqual(expected);
    expect(perDay.map(({ date, units }) => ({ date, units }))).toEqual(units);
  });

  test('lows lined up on exercise and bedtime', () => {
    const { during, without, exercise, bedtime } = measuredValue(measures.lowsLined);
    const pairs = [
      [during, figures.lined.during],
      [without, figures.lined.without],
      ...exercise.map((one, i) => [one, figures.lined.exercise[i]!] as const),
      ...bedtime.map((one, i) => [one, figures.lined.bedtime[i]!] as const),
    ] as const;
    for (const [{ lows, hours }, [k, h]] of pairs) {
      expect(lows).toBe(k);
      near(hours, h);
    }
  });

  test.each([
    ['very-highs', 'veryHigh'],
    ['much-high', 'muchHigh'],
  ] as const)('%s with a note and without', (of: Outcome, name) => {
    const one = measuredValue(measures.notedBefore).find((each) => each.of === of)!;
    const expected = figures.highs[name];
    expect(one.dates).toEqual(expected.dates);
    for (const id of ['exercise', 'weekend'] as const) {
      const { withIt, without, p } = one.notes.find((note: NoteBefore) => note.id === id)!;
      expect({ withIt, without }).toEqual({ withIt: expected[id].withIt, without: expected[id].without });
      near(p, expected[id].p);
    }
  });

  test.skipIf(figures.pregnancy === null)('weeks of a pregnancy, and fasting values beside the published goal', () => {
    const { weeks, fasting } = measuredValue(measures.pregnancy);
    expect(weeks).toHaveLength(figures.pregnancy!.weeks.length);
    for (const [i, week] of figures.pregnancy!.weeks.entries())
      for (const [name, value] of Object.entries(week)) {
        const found = weeks[i]![name as 'share'];
        if (typeof value === 'number') near(found, value);
        else expect(found).toBe(value);
      }
    expect(fasting).toMatchObject({
      n: figures.pregnancy!.fasting.n,
      below: figures.pregnancy!.fasting.below,
      goal: 95,
    });
    near(fasting.median, figures.pregnancy!.fasting.median);
  });
});

/** Needs Python 3; without it the committed figures are taken as they are. */
test.skipIf(spawnSync('python3', ['--version']).status !== 0)('the figures are what the script gives', () => {
  const { from, to, set, due } = load('pregnancy');
  const script = new URL('orders.py', import.meta.url).pathname;
  const args = [script, 'pregnancy', '--from', from, '--to', to, '--set', set, '--due', due ?? ''];
  expect(JSON.parse(spawnSync('python3', args, { encoding: 'utf8' }).stdout)).toEqual(load('pregnancy'));
});

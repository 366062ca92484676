import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../src/model/notedBefore.ts';
import type { Times } from '../../src/model/occasions.ts';
import { logWords } from '../occasions/logs.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { analysedSource } from './sources.ts';

interface Sides {
  dates: string[];
  withIt: Times;
  without: Times;
  p: number | null;
}

/** What noted.py worked out from the same diaries by itself. */
interface Figures {
  from: string;
  to: string;
  set: 'adult' | 'pregnancy-type-1';
  sessions: { low: boolean | null; lowMinutes: number; lowest: number | null }[];
  lows: Sides;
  nightLows: Sides;
  followed: Times;
}

const folder = new URL('./noted/', import.meta.url);
const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));
const load = (source: string): Figures => JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));

describe.each(sources)('%s, notes beside readings worked out twice', (source) => {
  const figures = load(source);
  const { measures } = analysedSource(source, figures, { logWords });

  test('from the start of exercise to 6 in the morning', () => {
    const found = measuredValue(measures.exercise).map(({ untilMorning }) => untilMorning);
    expect(found.map(({ low }) => low)).toEqual(figures.sessions.map(({ low }) => low));
    for (const [i, { lowMinutes, lowest }] of figures.sessions.entries()) {
      expect(found[i]!.lowMinutes).toBeCloseTo(lowMinutes, 6);
      expect(found[i]!.lowest).toBeCloseTo(lowest!, 6);
    }
  });

  test.each([
    ['lows', 'lows'],
    ['night-lows', 'nightLows'],
  ] as const)('%s with exercise and without', (of: Outcome, name) => {
    const one = measuredValue(measures.notedBefore).find((each) => each.of === of)!;
    const { dates, withIt, without, p } = figures[name];
    expect(one.dates).toEqual(dates);
    const exercise = one.notes.find(({ id }) => id === 'exercise')!;
    expect({ withIt: exercise.withIt, without: exercise.without }).toEqual({ withIt, without });
    if (p === null) expect(exercise.p).toBeNull();
    else expect(exercise.p).toBeCloseTo(p, 10);
    if (of === 'lows') expect(exercise.followed).toEqual(figures.followed);
  });
});

/** Needs Python 3; without it the committed figures are taken as they are. */
test.skipIf(spawnSync('python3', ['--version']).status !== 0)('the figures are what the script gives', () => {
  const { from, to, set } = load('evening-exercise');
  const script = new URL('noted.py', import.meta.url).pathname;
  const args = [script, 'evening-exercise', '--from', from, '--to', to, '--set', set];
  expect(JSON.parse(spawnSync('python3', args, { encoding: 'utf8' }).stdout)).toEqual(load('evening-exercise'));
});

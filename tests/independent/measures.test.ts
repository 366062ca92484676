import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Measured } from '../../src/model/measured.ts';
import type { Episodes } from '../../src/model/measures.ts';
import type { Settings } from '../../src/model/settings.ts';
import { BANDS } from '../../src/targets/bands.ts';
import { analysedSource, PARTS } from './sources.ts';

/** What measures.py worked out from the same files by itself. */
interface Figures {
  from: string;
  to: string;
  set: Settings['targets'];
  readings: number;
  interval: number;
  mixed: boolean;
  coverage: { share: number; hours: number; ofHours: number; fullDays: number; byDay: number[] };
  mean: number;
  censored: number;
  sd: number;
  cv: number;
  gmi: { percent: number; mmolPerMol: number } | null;
  minutes: Record<string, number>;
  shares: Record<string, number>;
  modalDay: { binMinutes: number; raw: Record<string, number | null>[] } | null;
  lows: Record<string, unknown>[];
  highs: Record<string, unknown>[];
  nights: Record<string, unknown>[];
}

const folder = new URL('figures/', import.meta.url);

function load(source: string): Figures {
  return JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));
}

function told<T>(measured: Measured<T>): T {
  if (!measured.ok) throw new Error(measured.why);
  return measured.value;
}

/** Every number within the tolerance, everything else the same; only what the figures hold is looked at. */
function check(found: unknown, expected: unknown, path: string, parts: number): void {
  if (typeof expected === 'number') {
    const difference = Math.abs((found as number) - expected);
    if (!(difference <= parts * Math.max(1, Math.abs(expected)))) expect([path, found]).toEqual([path, expected]);
  } else if (expected !== null && typeof expected === 'object') {
    if (Array.isArray(expected)) expect([path, (found as unknown[]).length]).toEqual([path, expected.length]);
    for (const [key, part] of Object.entries(expected))
      check((found as Record<string, unknown>)[key], part, `${path}.${key}`, parts);
  } else {
    expect([path, found]).toEqual([path, expected]);
  }
}

const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));

describe.each(sources)('%s, worked out twice', (source) => {
  const figures = load(source);
  const { timeline, measures } = analysedSource(source, figures);
  const compare = (found: unknown, expected: unknown, path: string) => check(found, expected, path, PARTS(source));

  test('readings and interval', () => {
    const { interval, mixed, readings } = timeline;
    compare(
      { readings: readings.count, interval, mixed },
      { readings: figures.readings, interval: figures.interval, mixed: figures.mixed },
      'timeline',
    );
  });

  test('coverage', () => {
    const coverage = told(measures.coverage);
    compare({ ...coverage, byDay: coverage.byDay.map(({ share }) => share) }, figures.coverage, 'coverage');
  });

  test('mean, SD, CV, GMI', () => {
    const mean = told(measures.mean);
    compare(mean, { mgdl: { value: figures.mean }, censored: figures.censored, bounded: figures.censored > 0 }, 'mean');
    compare([told(measures.sd), told(measures.cv)], [figures.sd, figures.cv], 'spread');
    if (figures.gmi) compare(told(measures.gmi), figures.gmi, 'gmi');
    else expect(measures.gmi.ok).toBe(false);
  });

  test('time in bands', () => {
    const { minutes, exclusive } = told(measures.timeInBands);
    compare(minutes, figures.minutes, 'minutes');
    for (const band of BANDS) compare(exclusive[band].value, figures.shares[band], band);
  });

  test('percentiles of the modal day', () => {
    if (figures.modalDay) compare(told(measures.modalDay), figures.modalDay, 'modalDay');
    else expect(measures.modalDay.ok).toBe(false);
  });

  test.each(['lows', 'highs'] as const)('%s', (side) => {
    const episodes: Episodes = told(measures[side]);
    compare(episodes.list, figures[side], side);
  });

  test('nights', () => {
    compare(told(measures.nights), figures.nights, 'nights');
  });
});

test('the sources are many enough to mean something', () => {
  expect(sources.length).toBeGreaterThanOrEqual(9);
});

/** Needs Python 3; without it the committed figures are taken as they are. */
const python = (script: string, args: string[], input = '') =>
  spawnSync('python3', [new URL(script, import.meta.url).pathname, ...args], { input, encoding: 'utf8' });

test.skipIf(spawnSync('python3', ['--version']).status !== 0)('the figures are what the scripts give', () => {
  const { from, to, set } = load('thin-data');
  const table = python('canonical.py', ['thin-data']);
  const { stdout } = python('measures.py', ['-', '--from', from, '--to', to, '--set', set], table.stdout);
  expect(JSON.parse(stdout)).toEqual(load('thin-data'));
});

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Compared } from '../../src/model/thenAndNow.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { analysedSource } from './sources.ts';

/** What changes.py worked out from the same files by itself. */
interface Figures {
  from: string;
  to: string;
  set: 'adult';
  fullDays: [number, number];
  changes: Record<string, { before?: number; now?: number; low?: number; high?: number; told?: boolean; why?: string }>;
}

const folder = new URL('./changes/', import.meta.url);
const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));
const load = (source: string): Figures => JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));
/** The slopes of the program are taken numerically, and its sums in another order; of a mean in mg/dL. */
const PART = 1e-6;

test.each(sources)('%s: changes and the intervals they lie in, worked out twice', (source) => {
  const figures = load(source);
  const { measures } = analysedSource(source, figures, { compare: { with: 'previous' } });
  const { before, now, changes } = measuredValue(measures.thenAndNow);
  expect([before.fullDays, now.fullDays]).toEqual(figures.fullDays);
  for (const [of, expected] of Object.entries(figures.changes)) {
    const found = changes.find((each) => each.of === (of as Compared))!;
    expect(found.why, of).toBe(expected.why);
    for (const name of ['before', 'now', 'low', 'high'] as const) {
      const value = expected[name];
      if (value !== undefined)
        expect(Math.abs(found[name]! - value), `${of} ${name}`).toBeLessThan(PART * Math.max(1, Math.abs(value)));
    }
    if (expected.told !== undefined) expect(found.verdict === 'more-than-noise', of).toBe(expected.told);
  }
});

/** Needs Python 3; without it the committed figures are taken as they are. */
test.skipIf(spawnSync('python3', ['--version']).status !== 0)('the figures are what the script gives', () => {
  const source = 'evening-exercise';
  const { from, to, set } = load(source);
  const script = (name: string) => new URL(name, import.meta.url).pathname;
  const rows = spawnSync('python3', [script('canonical.py'), source], { encoding: 'utf8' }).stdout;
  const args = [script('changes.py'), '-', '--from', from, '--to', to, '--set', set];
  const found = JSON.parse(spawnSync('python3', args, { encoding: 'utf8', input: rows }).stdout);
  expect(found).toEqual(load(source));
});

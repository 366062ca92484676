import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { measuredValue } from '../support/measuredValue.ts';
import { needs } from '../support/tools.ts';
import { differences, type Figures, foundIn } from './compared.ts';
import { analysedSource, PARTS } from './sources.ts';

const folder = new URL('figures/', import.meta.url);

function load(source: string): Figures {
  return JSON.parse(readFileSync(new URL(`${source}.json`, folder), 'utf8'));
}

const sources = readdirSync(folder).map((name) => name.replace(/\.json$/, ''));

describe.each(sources)('%s, worked out twice', (source) => {
  const figures = load(source);
  const analysis = analysedSource(source, figures);
  const found = foundIn(analysis);

  test.each(Object.keys(figures) as (keyof Figures)[])('%s', (name) => {
    expect(differences(found[name], figures[name], PARTS(source))).toEqual([]);
  });

  test('values beyond the range of the sensor make the mean a bound', () => {
    expect(measuredValue(analysis.measures.mean).bounded).toBe(figures.censored > 0);
  });
});

test('the sources are many enough to mean something', () => {
  expect(sources.length).toBeGreaterThanOrEqual(9);
});

/** Needs Python 3; without it the committed figures are taken as they are. */
const python = (script: string, args: string[], input = '') =>
  spawnSync('python3', [new URL(script, import.meta.url).pathname, ...args], { input, encoding: 'utf8' });

needs('python3')('the figures are what the scripts give', () => {
  const { from, to, set } = load('thin-data');
  const table = python('canonical.py', ['thin-data']);
  const { stdout } = python('measures.py', ['-', '--from', from, '--to', to, '--set', set], table.stdout);
  expect(JSON.parse(stdout)).toEqual(load('thin-data'));
});

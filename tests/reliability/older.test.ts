import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parseLayout } from '../../src/schemas/layout.ts';
import { readVisit } from '../../src/schemas/readVisit.ts';
import { readSettings } from '../../src/schemas/settings.ts';
import { parseThresholds } from '../../src/schemas/thresholds.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { filesIn } from '../cli/clinicRun.ts';
import { home, run, scratch } from '../cli/run.ts';
import { analysisOf } from '../support/story.ts';
import { shapeOf } from './shape.ts';

/**
 * What earlier versions wrote, as they wrote it. Never made anew: a file here that is no longer read, or a path that is
 * gone, is a broken promise (docs/reliability.md, "What is kept over time"). A new form gets a new file beside the old.
 */
const older = join(home, 'tests/data/older');
const text = (name: string): string => readFileSync(join(older, name), 'utf8');

describe('what was written once is read', () => {
  test.each(readdirSync(older).filter((name) => /^snapshot-\d+\.json$/.test(name)))('%s', (name) => {
    const read = readVisit(text(name), name);
    expect('visit' in read && read.visit.sums.days.length).toBe(14);
  });

  test('a snapshot is compared with by the command', () => {
    const folder = scratch({ 'before.json': text('snapshot-1.json') });
    const story = join(home, 'sample-data/evening-exercise');
    const { exit, err } = run(folder, ['report', story, '--compare', 'before.json', '--out', 'papers']);
    expect([exit, err]).toEqual([0, '']);
  });

  test('the record of a run gives its worklist again', () => {
    const folder = scratch();
    mkdirSync(join(folder, 'results'));
    cpSync(join(older, 'run-1.json'), join(folder, 'results/run-1-of-1.json'));
    const { exit, err } = run(folder, ['worklist', 'results']);
    expect([exit, err]).toEqual([2, expect.stringContaining('P-0003')]);
    expect([...filesIn(join(folder, 'results')).keys()]).toContain('worklist.pdf');
  });

  test('settings, layout and thresholds with every name there was', () => {
    expect(readSettings(text('settings-0.1.0.json'), 's')).toHaveProperty('settings');
    expect(parseLayout(JSON.parse(text('layout-0.1.0.json'))).ok).toBe(true);
    expect(parseThresholds(JSON.parse(text('thresholds-0.1.0.json'))).ok).toBe(true);
  });
});

describe('analysis.json keeps its names and types within one number of its schema', () => {
  test('every path there was is there, of no other type', async () => {
    const analysis = JSON.parse(analysisJson(await analysisOf('steady-fortnight')).join(''));
    const now = shapeOf(analysis);
    const then = JSON.parse(text(`analysis-${analysis.schema}.json`)) as Record<string, string>;
    // Where a list is empty or a value unknown, nothing is said of what would stand in it.
    const wrong = Object.entries(then).filter(([path, types]) => {
      const found = now[path]?.split('|');
      return !found?.every((type) => type === 'null' || types.split('|').includes(type));
    });
    expect(wrong).toEqual([]);
  });
});

describe('what a later version will write is refused by name, and nothing is written', () => {
  test('a visit file', () => {
    const later = JSON.stringify({ ...JSON.parse(text('snapshot-1.json')), version: 99, more: {} });
    const folder = scratch({ 'later.json': later });
    const story = join(home, 'sample-data/evening-exercise');
    const { exit, err } = run(folder, ['report', story, '--compare', 'later.json', '--out', 'papers']);
    expect(exit).toBe(64);
    expect(err).toMatch(/later\.json.*later version.*99/);
    expect(readdirSync(folder)).toEqual(['later.json']);
  });

  test.each([
    ['of a later form', (content: object) => ({ ...content, schema: 2 })],
    ['without people', (content: object) => ({ ...content, outcomes: undefined })],
    ['a list', () => []],
  ])('the record of a run %s', (_, change) => {
    const folder = scratch();
    mkdirSync(join(folder, 'results'));
    writeFileSync(join(folder, 'results/run-1-of-1.json'), JSON.stringify(change(JSON.parse(text('run-1.json')))));
    const { exit, err } = run(folder, ['worklist', 'results']);
    expect(exit).toBe(64);
    expect(err).toContain('run-1-of-1.json');
    expect(readdirSync(join(folder, 'results'))).toEqual(['run-1-of-1.json']);
  });
});

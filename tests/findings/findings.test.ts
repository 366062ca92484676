import { describe, expect, test } from 'vitest';
import { findings } from '../../src/findings/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { lookAll } from '../../src/topics/index.ts';
import { measuresWith, onlyMeasured } from '../support/measures.ts';
import { examples } from './examples/index.ts';

describe.each(findings.map((finding) => [finding.id, finding] as const))('%s', (_, finding) => {
  test.each(examples[finding.id].map((example) => [example[0], example] as const))('%s', (_name, example) => {
    const [, given, expected, set = 'adult'] = example;
    expect(finding.look(onlyMeasured(given), targetSets[set]).case).toBe(expected);
  });

  test('shows that it can hold, and names a source', () => {
    expect(examples[finding.id].map(([, , expected]) => expected)).toContain('holds');
    expect(finding.source).not.toBe('');
  });

  test('is untold, not absent, when nothing was measured', () => {
    expect(finding.look(onlyMeasured({}), targetSets.adult).case).toBe('untold');
  });
});

test('ids are unique', () => {
  expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
});

test('a finding that throws is told as failed, and the others are not lost', () => {
  const broken = measuresWith({ lows: { ok: true, value: null as never, n: 0, of: 'episodes' } });
  const found = lookAll(broken, targetSets.adult);
  expect(found).toHaveLength(findings.length);
  expect(found.find(({ id }) => id === 'very-low')?.look).toEqual({ case: 'untold', why: 'failed' });
  expect(found.find(({ id }) => id === 'time-in-range')?.look.case).toBe('holds');
});

test('a calm fortnight: only what was measured and what went well holds', () => {
  const held = lookAll(measuresWith(), targetSets.adult).filter(({ look }) => look.case === 'holds');
  expect(held.map(({ id }) => id)).toEqual(['no-lows-seen', 'best-days', 'time-in-range']);
});

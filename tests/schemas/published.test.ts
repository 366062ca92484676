import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { published } from '../../src/schemas/published.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { analysisOf, home, stories } from '../support/story.ts';

// Another program's reading of JSON Schema (draft 2020-12), so that what is published is not checked by what made it.
const ajv = new Ajv2020({
  strict: true,
  strictRequired: false,
  strictTypes: false,
  allErrors: true,
  allowUnionTypes: true,
});
addFormats.default(ajv);
const schemas = published();
const validators = Object.fromEntries(Object.entries(schemas).map(([name, schema]) => [name, ajv.compile(schema)]));

/** What a file has that its schema does not allow. */
function wrong(name: string, content: unknown): unknown[] {
  const validate = validators[`${name}.schema.json`]!;
  return validate(content) ? [] : (validate.errors ?? []).slice(0, 5);
}
const json = (path: string): unknown => JSON.parse(readFileSync(join(home, path), 'utf8'));

test('every schema names itself with the number of its form', () => {
  expect(Object.keys(schemas)).toEqual(
    ['analysis', 'visit', 'settings', 'layout', 'thresholds', 'manifest'].map((name) => `${name}.schema.json`),
  );
  for (const [name, schema] of Object.entries(schemas))
    expect(schema).toMatchObject({ $id: expect.stringContaining(name.split('.')[0]!), $schema: expect.any(String) });
});

describe('every golden fits', () => {
  test.each(stories)('%s without and with its readings', async (story) => {
    expect(wrong('analysis', json(`tests/golden/${story}/analysis.json`))).toEqual([]);
    const whole: unknown = JSON.parse(analysisJson(await analysisOf(story)).join(''));
    expect(wrong('analysis', whole)).toEqual([]);
  });

  test('settings of stories and of older versions, older layouts and thresholds', () => {
    for (const story of stories) expect(wrong('settings', json(`sample-data/${story}/settings.json`))).toEqual([]);
    for (const name of ['settings', 'layout', 'thresholds'])
      expect(wrong(name, json(`tests/data/older/${name}-0.1.0.json`))).toEqual([]);
  });
});

test.each<[string, string, object]>([
  ['analysis', 'a name without its unit', { measures: { sd: { ok: false, why: 'no-readings' } } }],
  ['settings', 'an unknown name', { targts: 'adult' }],
  ['layout', 'an unknown role', { columns: { A: 'sugar' } }],
  ['thresholds', 'a share over one', { veryHigh: { share: 15 } }],
  ['manifest', 'a time for a date', { person: 'a', visit: '10:30' }],
])('%s: %s is refused', (name, _, content) => {
  expect(wrong(name, content)).not.toEqual([]);
});

/** Numbers under such a name would need a unit to be read; those here are counts, codes, minutes or places. */
const WITHOUT_UNIT = /^(mean|mgdl|lowest|highest|extreme|peak|baseline|start|end|at|interval|offset|sd|cv|gmi|carbs)$/;

test('no number of the analysis stands under a name that hides its unit, and none stands for "none"', () => {
  const found = new Set<string>();
  const walk = (value: unknown, path: string, name: string): void => {
    if (typeof value === 'number' && (WITHOUT_UNIT.test(name) || value === -32768)) found.add(path);
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value)) {
      // On which side of the sensor's limits a value lies is no glucose.
      if (['settings', 'found', 'issues'].includes(path) || path.endsWith('.limits')) continue;
      const place = Array.isArray(value) ? `${path}[]` : [path, key].filter(Boolean).join('.');
      walk(inner, place, Array.isArray(value) ? name : key);
    }
  };
  for (const story of readdirSync(join(home, 'tests/golden')).filter((one) => stories.includes(one)))
    walk(json(`tests/golden/${story}/analysis.json`), '', '');
  expect([...found]).toEqual([]);
});

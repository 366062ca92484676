import { expect, test } from 'vitest';
import { readSettings } from '../../src/schemas/settings.ts';

const settingsOrIssues = (text: string): unknown => {
  const read = readSettings(text, 'settings.json');
  if ('settings' in read) return read.settings;
  return read.issues.map(({ code, origin, actual, expected }) => [code, origin?.line, actual, expected]);
};

test.each<[what: string, text: string, expected: unknown]>([
  ['nothing', '{}', {}],
  ['a unit', '{ "unit": "mmol/L" }', { unit: 'mmol/L' }],
  ['a period', '{ "from": "2026-02-28", "to": "2026-03-31" }', { from: '2026-02-28', to: '2026-03-31' }],
  ['a due date', '{ "dueDate": "2026-10-12" }', { dueDate: '2026-10-12' }],
  ['goals of a clinic in pregnancy', '{"pregnancyGoals": "90/-/115"}', { pregnancyGoals: '90/-/115' }],
  ['no due date', '{"dueDate": "October"}', [['settings-wrong-value', 1, 'dueDate', 'YYYY-MM-DD']]],
  ['no JSON', '{\n "unit": "mg/dL",\n}', [['settings-not-json', 3, undefined, undefined]]],
  ['an unknown unit', '{\n "unit": "mg"\n}', [['settings-wrong-value', 2, 'unit', 'mg/dL | mmol/L']]],
  ['a day that does not exist', '{"from": "2026-02-30"}', [['settings-wrong-value', 1, 'from', 'YYYY-MM-DD']]],
  ['no days at all', '{"days": 0}', [['settings-wrong-value', 1, 'days', '≥ 1']]],
  ['days as text', '{"days": "14"}', [['settings-wrong-value', 1, 'days', { is: 'json-number' }]]],
  ['a list', '[]', [['settings-wrong-value', 1, '{ }', { is: 'json-object' }]]],
])('%s', (_, text, expected) => {
  expect(settingsOrIssues(text)).toEqual(expected);
});

test('a misspelt name is told with those there are', () => {
  const read = readSettings('{\n\n "target": "adult"\n}', 'settings.json');
  expect(read).toMatchObject({ issues: [{ code: 'settings-unknown-name', origin: { line: 3 }, actual: 'target' }] });
  expect('issues' in read && read.issues[0]?.expected).toContain('targets');
});

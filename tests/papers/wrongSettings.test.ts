import { expect, test } from 'vitest';
import { analyse, issueText, type Settings, words } from '../../src/index.ts';
import { plainExport } from '../cli/run.ts';

const inputs = [{ name: 'a.csv', bytes: new TextEncoder().encode(plainExport(15)) }];
const RIGHT: Settings = { targets: 'adult', today: '2026-04-01', person: {}, zone: 'Europe/Madrid' };
const said = async (settings: unknown): Promise<string[]> => {
  const english = await words('en');
  // As a program without types would call it.
  const { ok, issues } = analyse(inputs, settings as Settings);
  expect(ok).toBe(false);
  expect(issues.every(({ level }) => level === 'refusal')).toBe(true);
  return issues.map((issue) => issueText(issue, english));
};

test.each<[string, unknown, RegExp[]]>([
  ['nothing', undefined, [/"\{ \}" has a value that does not fit/]],
  ['no target set', { ...RIGHT, targets: 'grown-up' }, [/"targets".*Expected: .*adult/]],
  ['an unknown name', { ...RIGHT, target: 'adult' }, [/"target" is not a setting. Settings are: targets, today/]],
  ['no day', { ...RIGHT, today: 'tomorrow' }, [/"today".*YYYY-MM-DD/]],
  ['no person', { targets: 'adult', today: '2026-04-01' }, [/"person"/]],
  ['a number for a name', { ...RIGHT, person: { name: 7 } }, [/"person\.name"/]],
  ['no zone', { ...RIGHT, zone: 'Mars/Olympus' }, [/"zone".*Europe\/Madrid/]],
  ['half a day', { ...RIGHT, period: { days: 0.5 } }, [/"period\.days"/]],
  ['two periods', { ...RIGHT, period: { days: 14, from: '2026-03-01' } }, [/"period".*days \| from, to/]],
  ['a period that ends first', { ...RIGHT, period: { from: '2026-03-09', to: '2026-03-02' } }, [/"period".*from ≤ to/]],
  ['a way that there is not', { ...RIGHT, compare: { with: 'before' } }, [/"compare\.with".*previous/]],
  ['dates without an end', { ...RIGHT, compare: { with: 'dates', from: '2026-03-01' } }, [/"compare\.to"/]],
  ['a unit', { ...RIGHT, unit: 'mg/l' }, [/"unit".*mg\/dL/]],
  ['a dose of A1C', { ...RIGHT, a1c: { value: '7', unit: '%' } }, [/"a1c\.value"/]],
  ['words of logbooks', { ...RIGHT, logWords: { foods: 3 } }, [/"logWords/]],
  ['a list for a list', { ...RIGHT, medicines: 'aspirin', acceptLosses: 'a.csv' }, [/"medicines"/, /"acceptLosses"/]],
  ['topics without the locked ones', { ...RIGHT, topicOrder: [] }, [/"topicOrder".*locked/]],
  ['a layout', { ...RIGHT, layout: { unit: 'mg' } }, [/layout/]],
])('wrong settings give issues: %s', async (_, settings, patterns) => {
  const texts = await said(settings);
  for (const pattern of patterns)
    expect(
      texts.some((text) => pattern.test(text)),
      texts.join('\n'),
    ).toBe(true);
});

test('right settings are used, and an issue is said in each language', async () => {
  expect(analyse(inputs, RIGHT).ok).toBe(true);
  const [issue] = analyse([{ name: 'b.csv', bytes: new TextEncoder().encode('a,b\n1,2\n') }], RIGHT).issues;
  const [english, spanish] = [issueText(issue!, await words('en')), issueText(issue!, await words('es-MX'))];
  expect(english).not.toBe(spanish);
  expect(english).toContain('b.csv');
});

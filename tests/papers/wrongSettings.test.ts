import { expect, test } from 'vitest';
import { analyse, issueText, type Settings, words } from '../../src/index.ts';
import type { LocalDate, MgPerDl } from '../../src/model/glucose.ts';
import { wrongSettings } from '../../src/schemas/givenSettings.ts';
import { USUAL_ORDER } from '../../src/topics/order.ts';
import { plainExport } from '../cli/run.ts';
import { logWords } from '../occasions/logs.ts';

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

/** Every setting there is: a new one that this does not name does not compile. */
const ALL: Required<Settings> = {
  ...RIGHT,
  person: { name: 'Somebody', code: 'P-1', clinic: 'A clinic', phone: '555 0100' },
  unit: 'mg/dL',
  zone: 'Europe/Madrid',
  dateOrder: 'day-first',
  period: { from: '2026-03-03', to: '2026-03-14' },
  layout: { unit: 'mg/dL' },
  logWords,
  inferMeals: true,
  compare: { with: 'change', date: '2026-03-08' as LocalDate, text: 'a new routine' },
  medicines: [{ id: 'a', words: ['a'], source: 'ours' }],
  topicOrder: USUAL_ORDER,
  topic: 'lows-seen',
  a1c: { value: 7.1, unit: '%' },
  dueDate: '2026-10-01' as LocalDate,
  pregnancyGoals: { fasting: 90 as MgPerDl, oneHour: null, twoHours: 115 as MgPerDl },
  moreIndices: true,
  acceptLosses: ['a.csv'],
};

test('whatever can be set is taken', () => {
  expect(wrongSettings(ALL)).toEqual([]);
  const ways: Settings['compare'][] = [
    { with: 'previous' },
    { with: 'dates', from: '2026-03-01' as LocalDate, to: '2026-03-02' as LocalDate },
    { with: 'visits', visits: [] },
  ];
  for (const compare of ways) expect(wrongSettings({ ...ALL, compare })).toEqual([]);
  expect(wrongSettings({ ...RIGHT, period: { days: 28 } })).toEqual([]);
});

test('right settings are used, and an issue is said in each language', async () => {
  expect(analyse(inputs, RIGHT).ok).toBe(true);
  const [issue] = analyse([{ name: 'b.csv', bytes: new TextEncoder().encode('a,b\n1,2\n') }], RIGHT).issues;
  const [english, spanish] = [issueText(issue!, await words('en')), issueText(issue!, await words('es-MX'))];
  expect(english).not.toBe(spanish);
  expect(english).toContain('b.csv');
});

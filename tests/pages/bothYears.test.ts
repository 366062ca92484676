import { expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { pageText } from '../support/pageText.ts';
import { wordsOf } from '../support/story.ts';

const DAY = 86_400_000;
const wear = (from: string, days: number): string[] =>
  Array.from({ length: days * 288 }, (_, k) => {
    const at = new Date(Date.parse(`${from}T00:00:00Z`) + k * 300_000).toISOString();
    return `${at.slice(0, 16).replace('T', ' ')},${110 + (k % 40)}`;
  });

function paper(rows: string[], from: string, to: string, voice: 'clinic' | 'patient'): string {
  const bytes = new TextEncoder().encode(['Time,Glucose (mg/dL)', ...rows].join('\n'));
  const settings = { targets: 'adult', today: '2026-07-01', person: {}, period: { from, to } } as const;
  const analysis = analyse([{ name: 'a.csv', bytes }], settings, 'test');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return pageText(compose(analysis, wordsOf(), { voice, paper: 'a4', whole: wordsOf() })).replaceAll('\u00a0', ' ');
}

test('a period says both years where they are two, and one where it is one', () => {
  const rows = wear('2025-12-25', 14);
  for (const voice of ['clinic', 'patient'] as const) {
    expect(paper(rows, '2025-12-25', '2026-01-07', voice)).toMatch(/2025,? to [^\n]*2026/);
    expect(paper(rows, '2026-01-01', '2026-01-07', voice)).not.toContain('2025');
  }
});

test('two wears a year apart are told as two stretches, with the hole', () => {
  const text = paper([...wear('2025-02-01', 3), ...wear('2026-02-01', 10)], '2025-02-01', '2026-02-10', 'clinic');
  const days = Math.floor((Date.parse('2026-02-01') - Date.parse('2025-02-04')) / DAY);
  expect(text).toMatch(
    new RegExp(`two stretches: between [^\\n]*2025 and [^\\n]*2026 there are no readings for ${days} days`),
  );
});

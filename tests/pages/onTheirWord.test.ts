import { expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Settings } from '../../src/model/settings.ts';
import { wordsOf } from '../support/story.ts';

/** A day of every two is written in the other unit: as mg/dL its numbers are no glucose, and those of the other day are. */
function mixed(): Uint8Array {
  const rows = Array.from({ length: 16 * 96 }, (_, i) => {
    const at = new Date(Date.UTC(2026, 2, 2) + i * 900_000).toISOString().slice(0, 16);
    const mgdl = Math.round(130 + 45 * Math.sin(i / 11));
    return `${at},${Math.floor(i / 96) % 3 > 0 ? (mgdl / 18).toFixed(0) : mgdl}`;
  });
  return new TextEncoder().encode(`Time,Glucose\n${rows.join('\n')}\n`);
}

const settings: Settings = {
  ...{ targets: 'adult', today: '2026-04-01', period: {}, person: {} },
  ...{ unit: 'mg/dL', acceptLosses: ['mixed.csv'] },
};

test.each([
  ['en', /mg\/dL is the word of whoever made this report\./, /The unit mg\/dL is somebody’s word\./],
  ['es', /mg\/dL es la palabra de quien hizo este informe\./, /La unidad mg\/dL es la palabra de alguien\./],
])('a unit said against the numbers stands on page 1 of both papers, in %s', (language, clinic, patient) => {
  const analysis = analyse([{ name: 'mixed.csv', bytes: mixed() }], settings, 'test');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  expect(analysis.issues.map(({ code }) => code)).toContain('unit-contradicts-user');
  for (const [voice, expected] of [
    ['clinic', clinic],
    ['patient', patient],
  ] as const) {
    const [first] = compose(analysis, wordsOf(language), { voice, paper: 'a4' }).pages;
    const text = JSON.stringify(first, (_, value) => (typeof value === 'function' ? value() : value));
    expect(text).toMatch(expected);
  }
});

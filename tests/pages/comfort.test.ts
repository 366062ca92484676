import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { everyForm, pageText } from '../support/pageText.ts';
import { wordsOf } from '../support/story.ts';

/** Statements that would comfort without ground, and what must come first. Their conditions are ours. */
function paper(of: 'draft' | 'patient', days: number, value: (minute: number, day: number) => number | null) {
  const rows: string[] = ['time,glucose mg/dL'];
  for (let day = 0; day < days; day++)
    for (let minute = 0; minute < 1440; minute += 5) {
      const level = value(minute, day);
      const clock = [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':');
      if (level !== null) rows.push(`2026-03-${String(day + 2).padStart(2, '0')} ${clock},${level}`);
    }
  const bytes = new TextEncoder().encode(rows.join('\n'));
  const analysis = analyse(
    [{ name: 'made.csv', bytes }],
    { targets: 'adult', today: '2026-05-01', person: {} },
    'test',
  );
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  const asked =
    of === 'draft' ? ({ voice: 'clinic', paper: 'a4', part: 'draft' } as const) : ({ voice: of, paper: 'a4' } as const);
  return pageText(compose(analysis, wordsOf(), asked)).replaceAll('\u00a0', ' ');
}

const wave = (minute: number) => 130 + Math.round(20 * Math.sin(minute / 120));

describe('hours that hold no night', () => {
  const byDay = (minute: number) => (minute < 420 ? null : wave(minute));

  test('are no day of 24 blocks', () => {
    const text = paper('patient', 4, byDay);
    expect(text).toContain('None of the readings were at night. That is too little to show a day of 24 hours.');
    expect(text).not.toMatch(/24 blocks|You were in range for about/);
    expect(text).not.toContain('We saw no lows');
    expect(paper('patient', 4, wave)).toMatch(/24 blocks/);
  });

  test('are no nights free of lows', () => {
    expect(paper('draft', 4, byDay)).toContain('No night could be told: all 3 nights had too few readings.');
    expect(paper('draft', 4, wave)).toContain('Of 4 nights that could be told, none showed readings in the low range.');
  });
});

describe('a draft about hours very high', () => {
  const high = (minute: number) => (minute >= 720 && minute < 1080 ? 290 : minute >= 600 && minute < 660 ? 200 : 120);
  const lowAt = (from: number, value: number) => (minute: number, day: number) =>
    day === 3 && minute >= from && minute < from + 20 ? value : high(minute);
  const order = (text: string) => text.indexOf('highs held') - text.indexOf('below 70 mg/dL of 15 minutes');

  test('says them before one short low by day', () => {
    expect(order(paper('draft', 14, lowAt(500, 69)))).toBeLessThan(0);
  });

  test.each([
    ['very low', lowAt(500, 53)],
    ['at night', lowAt(60, 69)],
    ['long', (minute: number, day: number) => (day === 3 && minute >= 400 && minute < 520 ? 69 : high(minute))],
  ])('but after a low that is %s', (_, value) => {
    expect(order(paper('draft', 14, value))).toBeGreaterThan(0);
  });
});

test('a usual day with 40 % in range is not called calm, and a day with 30 % is not one that went well', () => {
  const rough = (minute: number, day: number) =>
    day % 5 === 0 && minute >= 600 && minute < 620 ? 65 : minute < 580 ? 120 : minute < 640 ? 130 : 240;
  const text = paper('patient', 14, rough);
  expect(text).not.toMatch(/calm|Your day with most time in range/);
});

test('in pregnancy, fingersticks that disagree stand with the topic', () => {
  const rows = ['time,glucose mg/dL,fingerstick mg/dL'];
  for (let day = 2; day < 16; day++)
    for (let minute = 0; minute < 1440; minute += 5) {
      const clock = [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':');
      rows.push(`2026-03-${String(day).padStart(2, '0')} ${clock},${wave(minute)},${minute === 480 ? 190 : ''}`);
    }
  const bytes = new TextEncoder().encode(rows.join('\n'));
  const front = (targets: 'adult' | 'pregnancy-type-1') => {
    const settings = { targets, today: '2026-05-01', person: {} };
    const analysis = analyse([{ name: 'made.csv', bytes }], settings, 'test');
    if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
    const { pages } = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
    return everyForm(pages[0]).replaceAll('\u00a0', ' ');
  };
  expect(front('pregnancy-type-1')).toContain('of 14 fingersticks lie within');
  expect(front('adult')).not.toContain('of 14 fingersticks lie within');
});

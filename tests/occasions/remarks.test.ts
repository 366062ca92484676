import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { findings } from '../../src/findings/index.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { Remark } from '../../src/model/remarks.ts';
import { targetSets } from '../../src/targets/index.ts';
import { analyseStory, held } from '../samples/stories.ts';
import { english } from '../support/english.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { pageText } from '../support/pageText.ts';
import type { NoteOn } from '../support/timeline.ts';
import { logWords, measured } from './logs.ts';

/** A low from 12:00 to 12:30 and one from 02:00 to 03:00 of the second day, a high from 18:00 to 20:00. */
const value = (minute: number, day: number): number => {
  if (day === 0 && minute >= 720 && minute < 750) return 62;
  if (day === 1 && minute >= 120 && minute < 180) return 60;
  return day === 0 && minute >= 1080 && minute < 1200 ? 220 : 120;
};
const said = (day: number, minute: number, text: string): NoteOn => ({ day, minute, kind: 'text', text });
const measuredWith = (...notes: NoteOn[]): Measures => measured({ days: 3, value, notes });
const near = (day: number, minute: number): Remark['near'] =>
  measuredValue(measuredWith(said(day, minute, 'x')).remarks)[0]!.near;

describe('a remark stands near', () => {
  test.each<[string, number, number, Remark['near']]>([
    ['a low half an hour later', 0, 690, [{ of: 'low', index: 0 }]],
    ['nothing 31 minutes before a low', 0, 689, []],
    ['a low that ended two hours ago', 0, 870, [{ of: 'low', index: 0 }]],
    ['nothing a minute later', 0, 871, []],
    ['a high that ended an hour ago', 0, 1260, [{ of: 'high', index: 0 }]],
    ['nothing a minute after that', 0, 1261, []],
    ['the night to come from 10 in the evening', 0, 1320, [{ of: 'night', date: '2026-03-03' as never }]],
    [
      'the low of the night and the night, in the night',
      1,
      150,
      [
        { of: 'low', index: 1 },
        { of: 'night', date: '2026-03-03' as never },
      ],
    ],
    [
      'both to 9 in the morning, though the low is long over',
      1,
      539,
      [
        { of: 'low', index: 1 },
        { of: 'night', date: '2026-03-03' as never },
      ],
    ],
    ['neither at 9', 1, 540, []],
    ['no low that has not begun', 1, 60, [{ of: 'night', date: '2026-03-03' as never }]],
  ])('%s', (_, day, minute, expected) => {
    expect(near(day, minute)).toEqual(expected);
  });

  test('nothing where no time was written, and is still there', () => {
    const [remark] = measuredValue(measuredWith({ day: 0, kind: 'text', text: 'bad day' }).remarks);
    expect(remark).toMatchObject({ minute: null, text: 'bad day', near: [], felt: false });
  });
});

/** "How it felt" by the words of templates/foods.json, English and Spanish; that nothing was felt is said as well. */
test.each([
  ['Woke up sweaty, alarm missed?', true],
  ['did not notice anything', true],
  ['Me desperté con sudor', true],
  ['changed sensor', false],
  ['ran for the bus', false],
])('%s: speaks of how it felt: %s', (text, felt) => {
  expect(measuredValue(measuredWith(said(0, 735, text)).remarks)[0]!.felt).toBe(felt);
});

describe('what was said is not asked', () => {
  const ask = (measures: Measures) => {
    const look = findings.find(({ id }) => id === 'lows-seen')!.look(measures, targetSets.adult);
    if (look.case !== 'holds') throw new Error(look.case);
    const speaker = speakerOf(english, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
    return speaker.sayIfKnown('findings.lows-seen.clinic.ask', look.params)?.replaceAll('\u00a0', ' ');
  };

  test('without a remark the lows are asked about', () => {
    const none = measuredWith(said(0, 735, 'lunch was late'));
    expect(ask(none)).toBe('Were these lows felt, and what went on before them?');
  });

  test('with one it is counted', () => {
    const one = measuredWith(said(0, 735, 'felt shaky'), said(2, 600, 'felt fine'));
    expect(ask(one)).toBe('1 of 2 lows has a remark about how it felt. What went on before them?');
  });
});

test('every remark stands whole on paper, however long', () => {
  const analysis = held(analyseStory('evening-exercise', { logWords }));
  const long = `${'a long remark about the evening '.repeat(20)}end`;
  const remarks = measuredValue(analysis.measures.remarks).map((one, i) => (i === 0 ? { ...one, text: long } : one));
  const changed = {
    ...analysis,
    measures: {
      ...analysis.measures,
      remarks: { ok: true as const, value: remarks, n: remarks.length, of: 'notes' as const },
    },
  };
  const text = pageText(compose(changed, english, { voice: 'clinic', paper: 'a4', part: 'further' }));
  for (const remark of remarks) expect(text).toContain(remark.text);
  const visit = pageText(compose(analysis, english, { voice: 'clinic', paper: 'a4' }));
  for (const remark of measuredValue(analysis.measures.remarks)) expect(visit).toContain(remark.text);
  expect(text).toMatch(/woke up sweaty, alarm missed\? \| the low of .*; the night to/);
});

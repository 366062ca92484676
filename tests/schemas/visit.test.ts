import { describe, expect, test } from 'vitest';
import { readVisit } from '../../src/schemas/readVisit.ts';
import type { VisitJson } from '../../src/schemas/visit.ts';
import { visitText } from '../../src/schemas/visitText.ts';
import { chance } from '../../src/stats/chance.ts';
import { simulated, WORLDS } from '../support/simulatedDays.ts';
import { visitLike } from '../support/visits.ts';

const sums = simulated(WORLDS[1]!, 14, 0, '2026-01-01', chance(1));
const visit = visitLike(sums, {
  person: { code: 'P-1', clinic: 'Invented clinic' },
  goals: [{ of: 'in-range', op: '>', share: 0.7 }],
  topic: { id: 'lows-at-night', rule: 'lows-first' },
  topicMeasure: { of: 'after-note', outcome: 'lows', note: { id: 'exercise', name: '' }, count: { k: 5, n: 9 } },
  held: ['lows-at-night'],
  agreed: { goal: 'fewer lows after football', sure: 7, nextVisit: '2026-02-01' as never },
  changed: [{ on: '2026-01-10' as never, what: 'other shoes' }],
});
const FIRST = sums.days[0]!.date;
const text = visitText(visit);
const read = (content: string) => readVisit(content, visit.file);

test('what is written is read again, number for number', () => {
  expect(read(text)).toEqual({ visit });
});

test('what is written can be read, whatever was typed or noted', () => {
  const { topicMeasure } = visit;
  if (topicMeasure?.of !== 'after-note') throw new Error('an example with a note');
  const steered = visitText({
    ...visit,
    // A mark of direction, a joiner as Persian writes it, a line end, half a sign at the longest, nothing but signs.
    person: { code: 'P\u200e-1', clinic: 'می\u200cروم\u2028clinic' },
    changed: [
      { on: FIRST, what: `other\nshoes\u0007 ${'x'.repeat(67)}\u{1f45f}` },
      { on: FIRST, what: '\u202e' },
    ],
    topicMeasure: { ...topicMeasure, note: { id: 'exercise-kind', name: 'run \u{1f3c3}\u200d\u2642' } },
  });
  expect(read(steered)).toMatchObject({
    visit: {
      person: { code: 'P-1', clinic: 'میروم clinic' },
      changed: [{ what: `other shoes ${'x'.repeat(67)}` }],
      topicMeasure: { note: { name: 'run \u{1f3c3}\u2642' } },
    },
  });
});

test('it holds sums, what was agreed and a code, and no name, note or file', () => {
  const keys = new Set<string>();
  JSON.parse(text, (key, value) => {
    if (!/^\d*$/.test(key)) keys.add(key);
    return value;
  });
  // Whole, so that a new name is looked at. `name` is that of a note that stands before lows: of a food or a kind of exercise.
  expect([...keys].sort().join(' ')).toBe(
    'agreed bandMinutes by changed clinic code count date days format from goal goals hash held highShare ' +
      'highs id inRangeShare intervalMinutes k knownMinutes lengthMinutes lowShare lows meanMgPerDl minutes ' +
      'n name nextVisit nightLow nightsLowShare note numbers of on op origin outcome period person rule ' +
      'sensors share squaresMgPerDl2Minutes sumMgPerDlMinutes sure targets to topic topicMeasure unit ' +
      'version veryLows what',
  );
  expect(Object.keys(JSON.parse(text).person)).toEqual(['code', 'clinic']);
});

const changed = (change: (content: VisitJson) => void): string => {
  const content = JSON.parse(text);
  change(content);
  return JSON.stringify(content);
};
const day = (all: VisitJson) => all.days[3]!;

/** One refused file of each kind, with what it is told by. */
test.each<[string, string, RegExp]>([
  ['no JSON', 'x', /^JSON$/],
  ['cut off in the middle', text.slice(0, text.length / 2), /^JSON$/],
  ['another kind of file', '{"format": "something"}', /^format: "something"/],
  ['an earlier form than there was', changed((all) => Object.assign(all, { version: 0 })), /^version: 0/],
  ['a name in it', changed((all) => Object.assign(all.person, { name: 'Marit' })), /^person\.name$/],
  ['a name it does not know', changed((all) => Object.assign(all, { more: 1 })), /^more$/],
  ['no days', changed((all) => Object.assign(all, { days: [] })), /^days: \[\]/],
  ['a day twice', changed((all) => all.days.push(all.days.at(-1)!)), /^days\.14\.date: 2026-01-14/],
  ['days out of order', changed((all) => all.days.reverse()), /^period\.from: 2026-01-01/],
  ['no such day', changed((all) => Object.assign(day(all), { date: '2026-02-30' })), /^days\.3\.date: "2026-02-30"/],
  ['minutes that do not add up', changed((all) => Object.assign(day(all), { minutes: 700 })), /^days\.3: 2026-01-04/],
  ['squares no values give', changed((all) => Object.assign(day(all), { squaresMgPerDl2Minutes: 1 })), /^days\.3: /],
  ['a number that is none', text.replace(/"sumMgPerDlMinutes":\d+\.?\d*/, '"sumMgPerDlMinutes":null'), /^days\.0\.sum/],
  ['a number below nothing', changed((all) => Object.assign(day(all), { highs: -1 })), /^days\.3\.highs: -1/],
  [
    'more of some than there are',
    changed((all) => Object.assign(all.topicMeasure!, { count: { k: 9, n: 2 } })),
    /^topicMeasure/,
  ],
  ['a period its days do not have', changed((all) => Object.assign(all.period, { to: '2026-03-01' })), /^period\.to/],
  [
    'a head that contradicts its days',
    changed((all) => Object.assign(all.numbers, { inRangeShare: { value: 0.99, low: 0.9, high: 1 } })),
    /^numbers\.inRangeShare: 0\.99/,
  ],
  ['a sureness over ten', changed((all) => Object.assign(all.agreed!, { sure: 11 })), /^agreed\.sure: 11/],
  ['a step on two lines', changed((all) => Object.assign(all.agreed!, { step: 'a\nb' })), /^agreed\.step: /],
  [
    'a text that turns its direction',
    changed((all) => Object.assign(all.agreed!, { goal: 'a\u202eb' })),
    /^agreed\.goal/,
  ],
  ['a text without end', changed((all) => Object.assign(all.agreed!, { goal: 'x'.repeat(2000) })), /^agreed\.goal/],
  ['a script for a code', changed((all) => Object.assign(all.person, { code: '<b>\u0000' })), /^person\.code/],
  ['another prototype', text.replace('"agreed": {', '"agreed": {"__proto__": {"goal": "x"},'), /__proto__/],
])('%s is refused with its place', (_, bad, place) => {
  const found = read(bad);
  expect('problem' in found && found.problem).toMatch(place);
});

test('a later form is told with both numbers, whatever else is in it', () => {
  const later = changed((all) => Object.assign(all, { version: 3, more: 'x', days: 'elsewhere' }));
  expect(read(later)).toEqual({ newer: '3', known: '2' });
});

describe('the form before it, of sums of days alone', () => {
  const { targets, unit, interval, sensors, days } = sums;
  const snapshot = {
    format: 'daybands-snapshot',
    version: 1,
    made: { by: '0.1.0', hash: 'abc', on: '2026-01-20' },
    ...{ targets, unit, interval, sensors },
    days: days.map(({ nightLow: _, ...rest }) => rest),
  };
  test('is read, with the numbers that its days give', () => {
    const found = read(JSON.stringify(snapshot));
    expect(found).toMatchObject({ visit: { sums, agreed: null, topic: null, person: {} } });
    const minutes = (of: (one: (typeof days)[number]) => number) => days.reduce((sum, one) => sum + of(one), 0);
    const share = minutes((one) => one.bands[2]) / minutes((one) => one.minutes);
    expect('visit' in found && found.visit.numbers.inRangeShare?.value).toBeCloseTo(share, 12);
  });
  test.each([
    ['a name in it', { ...snapshot, name: 'Marit' }, /^name$/],
    ['no days', { ...snapshot, days: [] }, /^days: \[\]/],
  ])('%s is refused', (_, bad, place) => {
    const found = read(JSON.stringify(bad));
    expect('problem' in found && found.problem).toMatch(place);
  });
});

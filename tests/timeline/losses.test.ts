import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Input } from '../../src/model/input.ts';
import type { Settings } from '../../src/model/settings.ts';
import { pageText } from '../support/pageText.ts';
import { wordsOf } from '../support/story.ts';

const MINUTE = 60_000;
const START = Date.parse('2026-03-02T00:00:00Z');
const stamp = (t: number): string => new Date(t).toISOString().slice(0, 16).replace('T', ' ');
const text = (name: string, lines: string[]): Input => ({ name, bytes: new TextEncoder().encode(lines.join('\n')) });

/** Readings every five minutes; `value` gives the cell. */
function sensor(name: string, days: number, value: (k: number) => string | number, from = START): Input {
  const rows = Array.from({ length: days * 288 }, (_, k) => `${stamp(from + k * 5 * MINUTE)},${value(k)}`);
  return text(name, ['Time,Glucose (mg/dL)', ...rows]);
}
const usual = (k: number): number => 110 + (k % 40);
const other = (k: number): number => 180 + (k % 30);

const analysed = (inputs: Input[], settings: Partial<Settings> = {}) =>
  analyse(inputs, { targets: 'adult', today: '2026-07-01', person: {}, ...settings }, 'test');
const refusals = (result: ReturnType<typeof analysed>): string[] =>
  result.issues.filter(({ level }) => level === 'refusal').map(({ code }) => code);

function pageOne(
  result: ReturnType<typeof analysed>,
  voice: 'clinic' | 'patient',
  language: 'en' | 'es' = 'en',
): string {
  if (!result.ok) throw new Error(refusals(result).join());
  const words = wordsOf(language);
  const report = compose(result, words, { voice, paper: 'a4', whole: wordsOf() });
  return pageText({ ...report, pages: report.pages.slice(0, 1) }).replaceAll('\u00a0', ' ');
}

describe('a loss', () => {
  // Limits as stated: said from 1 %, refused from 5 % (ours).
  it.each([
    [0.005, 'nothing'],
    [0.02, 'said'],
    [0.04, 'said'],
    [0.06, 'refused'],
  ])('of %d of the readings is %s', (share, what) => {
    const every = Math.round(1 / share);
    const result = analysed([sensor('a.csv', 14, (k) => (k % every === 0 ? 'x' : usual(k)))]);
    expect(refusals(result)).toEqual(what === 'refused' ? ['losses-refused'] : []);
    if (!result.ok) return;
    for (const voice of ['clinic', 'patient'] as const)
      expect(/of 4,032 readings and notes in a\.csv could not be used/.test(pageOne(result, voice))).toBe(
        what === 'said',
      );
    expect(pageOne(result, 'clinic', 'es').includes('No se pudieron usar')).toBe(what === 'said');
  });

  it.each([
    ['a.csv', {}],
    ['P-17', { code: 'P-17' }],
  ])('is accepted by the name %s, and page 1 says so', (name, person) => {
    const broken = [sensor('a.csv', 14, (k) => (k % 10 === 0 ? 'x' : usual(k)))];
    expect(refusals(analysed(broken, { acceptLosses: ['b.csv'], person }))).toEqual(['losses-refused']);
    const result = analysed(broken, { acceptLosses: [name], person });
    expect(pageOne(result, 'clinic')).toContain(
      '404 of 4,032 readings and notes in a.csv could not be used; whoever made this report accepted that',
    );
  });

  it('is none where a row repeats, stands at a limit, is empty, or a device wrote its code for nothing', () => {
    const cells = ['LOW', 'HIGH', '', '0', '120', '121', '122'];
    const rows = sensor('a.csv', 3, (k) => cells[k % cells.length]!);
    const result = analysed([rows, { ...rows, name: 'b.csv' }]);
    expect(refusals(result)).toEqual([]);
    expect(result.losses).toEqual([]);
  });

  it('stops nobody for one odd date in ten rows', () => {
    const lines = Array.from({ length: 10 }, (_, k) => `2026-03-02 08:${10 + 5 * k},${k === 4 ? 'x' : 100 + k}`);
    expect(refusals(analysed([text('a.csv', ['Time,Glucose (mg/dL)', ...lines])]))).toEqual([]);
  });

  it('in a log never costs the papers', () => {
    const log = text('notes.csv', [
      'Time,Carbs (g)',
      ...Array.from({ length: 40 }, (_, k) => `2026-03-0${2 + (k % 7)} ${k % 2 ? '12:00' : '25:99'},45`),
    ]);
    const result = analysed([sensor('a.csv', 14, usual), log]);
    expect(refusals(result)).toEqual([]);
    expect(pageOne(result, 'patient')).toContain('20 of 40 readings and notes in notes.csv');
  });
});

describe('times told twice and differently', () => {
  it('of two people are refused, whoever has more days', () => {
    for (const [a, b] of [
      [14, 14],
      [60, 5],
      [5, 60],
    ])
      expect(refusals(analysed([sensor('a.csv', a!, usual), sensor('b.csv', b!, other)]))).toContain(
        'times-contradict',
      );
  });

  it('under 5 % are used for neither, and page 1 says so', () => {
    const some = sensor('b.csv', 14, (k) => (k % 40 === 20 ? usual(k) + 9 : usual(k)));
    const result = analysed([sensor('a.csv', 14, usual), some]);
    expect(refusals(result)).toEqual([]);
    expect(pageOne(result, 'clinic')).toContain('101 of 4,032 readings and notes in a.csv could not be used');
    expect(result.ok && result.timeline.readings.count).toBe(4032 - 101);
  });

  it('at a change of sensor are none: the old one is used to its end', () => {
    const day = 24 * 60 * MINUTE;
    // Seven days each, side by side for the last 10 hours of the old one.
    const old = sensor('old.csv', 7, usual);
    const next = sensor('new.csv', 7, other, START + 7 * day - 600 * MINUTE);
    const result = analysed([next, old]);
    expect(refusals(result)).toEqual([]);
    expect(result.issues.filter(({ code }) => code === 'contradiction')).toEqual([]);
    expect(result.issues.find(({ code }) => code === 'two-sensors')?.count).toBe(120);
    if (!result.ok) throw new Error('refused');
    const { native, count } = result.timeline.readings;
    expect(count).toBe(7 * 288 * 2 - 120);
    expect([...native].findIndex((value) => value >= 180)).toBe(7 * 288);
    expect(result.losses).toEqual([]);
  });
});

describe('a file that cannot be read', () => {
  const readings = sensor('a.csv', 14, usual);
  it.each([
    [
      'a log with dates that can be read in two ways',
      text('log.csv', ['Time;Carbs (g)', '04/03/2026 08:00;45', '04/03/2026 12:00;50']),
    ],
    [
      'prose',
      text('letter.txt', ['Dear team, thank you for the sensor', 'it works well, most of the time', 'see you in May']),
    ],
    ['records of another form', text('log.json', ['{"steps": [1, 2, 3], "walks": {"a": 1}}'])],
    ['a picture', { name: 'log.csv', bytes: Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 1, 2]) }],
    ['a broken archive', { name: 'log.zip', bytes: Uint8Array.from([0x50, 0x4b, 3, 4, 1, 2]) }],
  ])('%s beside readings costs nobody the papers, and page 1 names it', (_, file) => {
    const result = analysed([readings, file]);
    expect(refusals(result)).toEqual([]);
    expect(result.issues[0]).toMatchObject({ code: 'file-left-out', origin: { file: file.name } });
    for (const voice of ['clinic', 'patient'] as const)
      expect(pageOne(result, voice)).toMatch(
        new RegExp(`could not be read and is (missing here|not in this paper): ${file.name}`),
      );
  });

  it('a log in world time beside readings as written costs nobody the papers either', () => {
    const log = text('log.csv', ['Time,Carbs (g)', '2026-03-04T08:00:00Z,45', '2026-03-04T12:00:00Z,50']);
    const result = analysed([readings, log]);
    expect(refusals(result)).toEqual([]);
    expect(result.issues.slice(0, 2).map(({ code, level }) => `${level} ${code}`)).toEqual([
      'warning file-left-out',
      'warning clock-utc',
    ]);
    expect(pageOne(result, 'clinic')).toContain('log.csv');
    expect(result.ledger).toMatchObject({ notes: 0, setAside: 2 });
    expect(analysed([readings, log], { zone: 'Europe/Helsinki' }).missing).toEqual([]);
    expect(refusals(analysed([log]))).toEqual(['clock-utc']);
  });

  it('is refused where it may hold many readings, or where there are no others', () => {
    const more = text('b.csv', [
      'When,What',
      ...Array.from({ length: 900 }, (_, k) => `${stamp(START + k * MINUTE)} x,${usual(k)}`),
    ]);
    expect(refusals(analysed([readings, more]))).not.toEqual([]);
    const unit = text('c.csv', [
      'Time,Glucose',
      ...Array.from({ length: 9 }, (_, k) => `2026-03-0${k + 1} 08:00,${20 + k}`),
    ]);
    expect(refusals(analysed([text('letter.txt', ['a,b', 'c,d']), unit]))).not.toEqual([]);
  });
});

it('issues stand gravest first', () => {
  const result = analysed([
    sensor('a.csv', 14, (k) => (k === 3 ? '' : k === 2 ? 'x' : usual(k))),
    text('letter.txt', ['a,b']),
  ]);
  const levels = result.issues.map(({ level }) => ['refusal', 'warning', 'note'].indexOf(level));
  expect(levels).toEqual(levels.toSorted());
  expect(new Set(levels).size).toBe(2);
});

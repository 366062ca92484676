import { describe, expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Input } from '../../src/model/input.ts';
import { addDays } from '../../src/time/calendar.ts';
import { collisions } from '../support/pieces.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';
import { open, write } from '../writers/paper.ts';

/** Invented people who fill the sheets as few do. */
interface Wearer {
  days: number;
  /** A low every evening: its lowest, mg/dL. */
  low?: number;
  /** Remarks, of so many words each. */
  remarks?: number;
  /** Rates a day, as a pump writes them. */
  rates?: number;
  /** Hours a day with readings. */
  hours?: number;
  name?: string;
}

const clock = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

function inputsOf({ days, low = 0, remarks = 0, rates = 0, hours = 24 }: Wearer): Input[] {
  const readings = ['Time,Glucose (mg/dL)'];
  const notes = ['Date,Time,Carbohydrate (g),Insulin (units),Note'];
  for (let day = 0; day < days; day++) {
    const date = addDays('2031-03-05', day);
    for (let minute = 0; minute < hours * 60; minute += 5) {
      const far = Math.abs(minute - 1300);
      const value = low > 0 && far < 40 ? low + far / 4 : 150 + 60 * Math.sin(minute / 190 + day * 1.7) + (day % 7) * 4;
      readings.push(`${date} ${clock(minute)},${Math.round(value)}`);
    }
    for (const [minute, grams, units] of [
      [430, 45, 4.5],
      [750, 60, 6],
      [1130, 72, 7.5],
      [1240, 15, 1],
    ] as const)
      notes.push(`${date},${clock(minute)},${grams},${units},`);
    for (let i = 0; i < rates; i++) notes.push(`${date},${clock(Math.floor((1440 / rates) * i))},,0.${(i % 9) + 1},`);
    for (let i = 0; i < Math.ceil(remarks / days); i++)
      notes.push(
        `${date},${clock(600 + i * 7)},,,what was written on day ${day + 1} for the ${i + 1}th time; felt a little shaky and sat down for a while`,
      );
  }
  return [
    { name: 'readings.csv', bytes: Buffer.from(readings.join('\n')) },
    { name: 'notes.csv', bytes: Buffer.from(notes.join('\n')) },
  ];
}

function analysisFor(wearer: Wearer): Analysis {
  const person = { name: wearer.name ?? 'Someone invented', code: 'X-1', clinic: 'A clinic (invented)' };
  const settings = { targets: 'adult' as const, today: '2032-05-01', period: { days: wearer.days }, person };
  const analysis = analyse(inputsOf(wearer), settings, 'test');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
}

const PEOPLE: [string, Wearer, sides: number][] = [
  ['a fortnight', { days: 14 }, 4],
  ['a low every evening for four weeks', { days: 28, low: 58 }, 4],
  ['a very low every evening for four weeks', { days: 28, low: 44 }, 4],
  ['a name of forty letters', { days: 14, name: 'Maximiliana-Wilhelmine Schwarzenbergerin' }, 4],
  ['the rates of a pump', { days: 14, low: 60, rates: 24 }, 4],
  ['two days', { days: 2 }, 2],
  ['three days', { days: 3 }, 4],
  ['five days', { days: 5, low: 62 }, 4],
  ['nine days', { days: 9, low: 62 }, 4],
  ['three weeks', { days: 21, low: 62 }, 4],
  ['days without a night', { days: 14, hours: 5 }, 2],
  ['ninety days', { days: 90, low: 60 }, 4],
  ['a year', { days: 365, low: 66 }, 4],
];

/** Sheets, smallest print, what stands on one another, and where the topic is. */
async function look(analysis: Analysis, language: string, paper: 'a4' | 'letter') {
  const report = compose(analysis, wordsOf(language), { voice: 'clinic', paper });
  const file = await open(await write(report));
  const topic = wordsOf(language) as { pages: { overview: { topic: { title: string } } } };
  return {
    pages: report.pages.map(({ id }) => id),
    sheets: file.sheets.length,
    smallest: Math.min(...file.sheets.flatMap(({ pieces }) => pieces.map(({ size }) => size))),
    on: file.sheets.flatMap(({ pieces }) => collisions(pieces)),
    topicFirst: file.sheets[0]!.text.includes(topic.pages.overview.topic.title),
    agreed: agreedOn(file.sheets.at(-1)!.text, language),
  };
}

/** What a visit ends with that does not stand whole on a side. */
function agreedOn(side: string, language: string): string[] {
  const { interpretation, agreed } = (
    wordsOf(language) as { pages: Record<'interpretation' | 'agreed', Record<string, string>> }
  ).pages;
  const lines = [interpretation.signature, agreed.goals, agreed.step, agreed.helper, agreed.next, agreed.sure];
  const flat = side.replace(/\s+/g, ' ');
  return lines.flatMap((line) => (line !== undefined && flat.includes(line) ? [] : [String(line)]));
}

// The least print: charts of small days (communication standard: axis text; ours for what stands beside a curve).
const LEAST_PRINT = 7.49;

describe.each(PEOPLE)('%s', (_, wearer, sides) => {
  const analysis = analysisFor(wearer);
  test.each([
    ['en', 'a4'],
    ['es', 'letter'],
  ] as const)('stands on its sheets, in %s on %s', async (language, paper) => {
    const { sheets, smallest, on, topicFirst, agreed } = await look(analysis, language, paper);
    expect.soft(sheets).toBe(sides);
    expect.soft(smallest).toBeGreaterThan(LEAST_PRINT);
    expect.soft(on).toEqual([]);
    expect.soft(topicFirst).toBe(true);
    expect.soft(agreed).toEqual([]);
  });
});

test('two hundred remarks stand whole: what does not fit on the second side is on a sheet of its own, and nothing else is added', async () => {
  const analysis = analysisFor({ days: 14, remarks: 200 });
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  expect(report.pages.map(({ id }) => id)).toEqual(['overview', 'clock', 'days', 'agreed', 'remarks']);
  const file = await open(await write(report));
  const shown = file.sheets.map(({ text }) => text.replace(/\s+/g, '')).join('');
  const { remarks } = analysis.measures;
  if (!remarks.ok) throw new Error(remarks.why);
  expect(remarks.value.length).toBeGreaterThanOrEqual(200);
  for (const { text } of remarks.value) expect(shown).toContain(text.replace(/\s+/g, ''));
  expect(file.sheets[0]!.text).toMatch(/more remarks stand/);
});

test.each(stories)('%s: nothing under 7.5 pt, nothing on anything else', async (story) => {
  const { smallest, on, agreed } = await look(await analysisOf(story), 'en', 'a4');
  expect(smallest).toBeGreaterThan(LEAST_PRINT);
  expect(on).toEqual([]);
  expect(agreed).toEqual([]);
});

// The aim of the redesign is sixteen hundred words of the two sheets, the caution for the care team left out; room is kept (ours).
test.each(stories)('%s: at most 1,550 words', async (story) => {
  const words = wordsOf() as { cautions: { clinicMethod: string } };
  const report = compose(await analysisOf(story), wordsOf(), { voice: 'clinic', paper: 'a4' });
  const file = await open(await write(report));
  const said = file.sheets.flatMap(({ text }) => text.split(/\s+/).filter((word) => word !== ''));
  expect(said.length - words.cautions.clinicMethod.split(' ').length).toBeLessThanOrEqual(1550);
});

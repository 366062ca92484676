import { expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import type { LowStory } from '../../src/model/lowStories.ts';
import { stressAnalysis } from '../support/stressPeople.ts';

/** Rules of ours, as `docs/measures.md` tells them. A low from 9 PM to 10 PM (or at other hours), with one note near it. */
interface Lows {
  /** Minutes of the two days at which an hour at 60 mg/dL begins. */
  lows: number[];
  /** Column and minute of a note. */
  notes?: [column: 'Food' | 'Alarm' | 'Note' | 'Rapid insulin (IU)' | 'Exercise', minute: number][];
}

const START = Date.UTC(2026, 2, 2);
const at = (minute: number): string => new Date(START + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');

function storiesOf({ lows, notes = [] }: Lows): { stories: LowStory[]; gravestFirst: number[] } {
  const readings = ['Time,Sensor glucose (mg/dL)'];
  for (let minute = 0; minute < 3 * 1440; minute += 5) {
    const low = lows.some((start) => minute >= start && minute < start + 60);
    readings.push(`${at(minute)},${low ? 60 : 110}`);
  }
  const columns = ['Food', 'Rapid insulin (IU)', 'Exercise', 'Alarm', 'Note'];
  const rows = notes.map(([column, minute]) => {
    const cells = columns.map((one) =>
      one !== column ? '' : one.endsWith('(IU)') ? '3' : `some ${one.toLowerCase()}`,
    );
    return `${at(minute)},${cells.join(',')}`;
  });
  const file = (name: string, lines: string[]) => ({ name, bytes: new TextEncoder().encode(`${lines.join('\n')}\n`) });
  const inputs = [
    file('sensor.csv', readings),
    ...(rows.length > 0 ? [file('log.csv', [`Time,${columns.join(',')}`, ...rows])] : []),
  ];
  const result = analyse(
    inputs,
    { targets: 'adult', today: '2026-03-05', unit: 'mg/dL', period: { days: 3 }, person: {} },
    'test',
  );
  if (!result.ok || !result.measures.lowStories.ok) throw new Error(JSON.stringify(result));
  return result.measures.lowStories.value;
}

const NINE_PM = 1260;

test.each<[string, NonNullable<Lows['notes']>[number], keyof LowStory, boolean]>([
  ['exercise 12 hours before', ['Exercise', NINE_PM - 720], 'exercise', true],
  ['exercise longer before', ['Exercise', NINE_PM - 725], 'exercise', false],
  ['food 4 hours before', ['Food', NINE_PM - 240], 'food', true],
  ['food longer before', ['Food', NINE_PM - 245], 'food', false],
  ['insulin alone 4 hours before', ['Rapid insulin (IU)', NINE_PM - 240], 'insulinOnly', true],
  ['insulin alone longer before', ['Rapid insulin (IU)', NINE_PM - 245], 'insulinOnly', false],
  ['an alarm 15 minutes after', ['Alarm', NINE_PM + 75], 'alarm', true],
  ['an alarm later', ['Alarm', NINE_PM + 80], 'alarm', false],
  ['food at its start', ['Food', NINE_PM], 'eaten', true],
  ['food half an hour after', ['Food', NINE_PM + 90], 'eaten', true],
  ['food later', ['Food', NINE_PM + 95], 'eaten', false],
  ['a remark in it', ['Note', NINE_PM + 30], 'remark', true],
  ['a remark the next noon', ['Note', NINE_PM + 900], 'remark', false],
])('%s', (_, note, part, near) => {
  const [story] = storiesOf({ lows: [NINE_PM], notes: [note] }).stories;
  expect(story![part] !== null).toBe(near);
});

test('lows from one noon to the next are one story, the one in the night tells it', () => {
  const { stories, gravestFirst } = storiesOf({ lows: [719 - 60, NINE_PM, 1440 + 120, 1440 + 780] });
  expect(stories.map(({ lows, gravest }) => [lows, gravest])).toEqual([
    [[0], 0],
    [[1, 2], 2],
    [[3], 3],
  ]);
  expect(gravestFirst).toEqual([1, 0, 2]);
});

test('level 2 comes before a night', () => {
  // Every fifth evening is at 50, by day; the others at 54 and more.
  const { lows, lowStories } = stressAnalysis({ days: 7, lowEvenings: true }).measures;
  if (!lows.ok || !lowStories.ok) throw new Error('not told');
  const [first] = lowStories.value.gravestFirst;
  expect(lows.value.list[lowStories.value.stories[first!]!.gravest]).toMatchObject({ level: 2, date: '2026-03-06' });
});

import { expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { drawingsIn } from '../support/geometry.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

const NAMES = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
/** Day of the week as the engine's own calendar has it (ECMAScript, Day Number and Week Day), 0 a Sunday. */
const dayOf = (date: string): number => new Date(`${date}T00:00Z`).getUTCDay();

/** Upright bars of ink at the left edge of a day's picture. */
const bars = ({ marks }: Drawing): { w: number; h: number }[] =>
  marks.flatMap((mark) =>
    mark.kind === 'rect' && mark.role === 'ink' && mark.x === 0 ? [{ w: mark.w, h: mark.h }] : [],
  );

/** Days whose picture does not say rightly whether they are of a weekend. */
const wronglyTold = (days: readonly Drawing[]): string[] =>
  days.flatMap((day) => {
    const weekend = [0, 6].includes(dayOf(day.date!));
    const [bar] = bars(day);
    const words = day.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    const named = words.some((text) => text.startsWith(NAMES[dayOf(day.date!)]!));
    const seen = bar !== undefined && bar.w >= 1.5 && bar.h >= 6;
    return weekend === seen && bars(day).length === Number(weekend) && named ? [] : [`${day.date}: ${words[0]}`];
  });

async function daysOf(analysis: Analysis): Promise<{ days: Drawing[]; texts: string }> {
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  const only = { ...report, pages: report.pages.filter(({ id }) => id === 'days') };
  const drawings = drawingsIn(asPrinted(only, fonts(), { version: 'test' })).map(({ drawing }) => drawing);
  const texts = drawings.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
  return { days: drawings.filter(({ how }) => how === 'day'), texts: texts.join('\n') };
}

// Large days, small ones of up to four weeks, and those beside a calendar.
const some: [name: string, make: () => Promise<Analysis>][] = [
  ...stories.map((name): [string, () => Promise<Analysis>] => [name, () => analysisOf(name)]),
  ...CROWD.filter(({ name }) => /every evening of 28|rates|^9 days|^90 days/.test(name)).map(
    ({ name, make }): [string, () => Promise<Analysis>] => [name, async () => make()],
  ),
];

test.each(some)(
  'Saturdays and Sundays have a bar beside their name, other days none, and the key says so: %s',
  async (name, make) => {
    const { days, texts } = await daysOf(await make());
    expect(wronglyTold(days)).toEqual([]);
    if (name === 'thin-data') return;
    expect(days.length).toBeGreaterThanOrEqual(4);
    expect(days.some(({ date }) => [0, 6].includes(dayOf(date!)))).toBe(true);
    expect(texts).toMatch(/Saturday|weekend/i);
  },
);

test('a weekend without its bar, and a weekday with one, are found', async () => {
  const { days } = await daysOf(await analysisOf('steady-fortnight'));
  const bar = { kind: 'rect', role: 'ink', x: 0, y: 2, w: 2, h: 20 } as const;
  const without = days.map((day) => ({
    ...day,
    marks: day.marks.filter(({ kind, role }) => kind !== 'rect' || role !== 'ink'),
  }));
  const all = without.map((day) => ({ ...day, marks: [bar, ...day.marks] }));
  const weekend = days.filter(({ date }) => [0, 6].includes(dayOf(date!))).length;
  expect(weekend).toBeGreaterThan(0);
  expect(wronglyTold(without)).toHaveLength(weekend);
  expect(wronglyTold(all)).toHaveLength(days.length - weekend);
});

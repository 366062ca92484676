import { expect, test } from 'vitest';
import { composeDay } from '../../src/compose.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Block } from '../../src/model/report.ts';
import { analyseStory, held, storyNames } from '../samples/stories.ts';
import { wordsOf } from '../support/story.ts';

const shared = { voice: 'clinic', paper: 'a4' } as const;

test.each(storyNames)('%s: every day can be opened, shows all of its notes, and its time adds up', (story) => {
  const analysis = held(analyseStory(story));
  const { days, notes } = analysis.timeline;
  for (const [i, { date }] of days.entries()) {
    const { report, before, after } = composeDay(analysis, wordsOf(), date, shared)!;
    expect([before, after]).toEqual([days[i - 1]?.date ?? null, days[i + 1]?.date ?? null]);
    const { blocks } = report.pages[0]!;
    const of = <K extends Block['kind']>(kind: K) =>
      blocks.filter((block): block is Extract<Block, { kind: K }> => block.kind === kind);
    const lists = of('list')
      .flatMap(({ items }) => items)
      .join('\n');
    for (const note of notes)
      if (note.day === i && note.kind === 'meal' && note.label !== undefined) expect(lists).toContain(note.label);
    const rows = of('table').flatMap((table) => table.rows);
    const shares = rows.map((row) => Number(/[\d.]+/.exec(row[2]!.text)![0]));
    // Each is rounded by itself.
    if (rows.length > 0) expect(Math.abs(shares.reduce((a, b) => a + b) - 100)).toBeLessThanOrEqual(1.5);
    const [{ drawing } = {}] = of('chart');
    expect(drawing!.narrow!.width).toBeLessThan(drawing!.width);
    expect(drawing!.day).toBeUndefined();
  }
});

test('a day outside the period is none', () => {
  const analysis = held(analyseStory('steady-fortnight'));
  expect(composeDay(analysis, wordsOf(), '1999-01-01' as LocalDate, shared)).toBeNull();
});

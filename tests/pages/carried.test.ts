import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { nightBarsChart } from '../../src/charts/nightBars.ts';
import { compose } from '../../src/compose.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Block } from '../../src/model/report.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { analysisOf, fonts, wordsOf } from '../support/story.ts';

/** Everything a side of a paper says, in words and on pictures. */
function said(analysis: Analysis, id: string, voice: 'clinic' | 'patient' = 'clinic'): string {
  const report = compose(analysis, wordsOf(), { voice, paper: 'a4' });
  const page = asPrinted(report, fonts(), { version: 'test' }).pages.find((one) => one.id === id);
  const texts = (block: Block): string[] => {
    if (block.kind === 'chart') return block.drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    if (block.kind === 'columns') return block.columns.flat().flatMap(texts);
    if (block.kind === 'panel' || block.kind === 'together') return block.blocks.flatMap(texts);
    if (block.kind === 'table') return block.rows.flat().map(({ text }) => text);
    if (block.kind === 'list' || block.kind === 'boxes') return [...block.items];
    if (block.kind === 'writeIn') return [block.label ?? ''];
    return 'text' in block ? [block.text] : [];
  };
  return (page?.blocks ?? []).flatMap(texts).join('\n').replaceAll('\u00a0', ' ');
}
const crowd = (name: string): Analysis => CROWD.find((one) => one.name === name)!.make();

describe('a side says what the topic rests on, and says it once', () => {
  test('the day of the only low is drawn, where few days fit', async () => {
    expect(said(await analysisOf('thin-data'), 'agreed')).toContain('Jun 28');
  });

  test('exercise that no low followed is no evidence beside the hours after bedtime', async () => {
    const side = said(await analysisOf('steady-fortnight'), 'agreed');
    expect(side).toContain('after 11 at night');
    expect(side).not.toContain('after exercise');
  });

  test('what could not be told is named under its heading, without saying so again', async () => {
    for (const story of ['steady-fortnight', 'long-highs'])
      expect(said(await analysisOf(story), 'agreed').match(/could not be told/gi) ?? []).toHaveLength(1);
  });

  test('short lows that lay in a night are told with the nights alone', async () => {
    const side = said(await analysisOf('long-highs'), 'overview');
    expect(side).toContain('None lasted 15 minutes');
    expect(side).not.toContain('never 15 minutes on end');
    expect(side).toContain('Short lows');
  });

  test('the hours that were read stand once on the paper of a person who had few', async () => {
    expect(said(await analysisOf('thin-data'), 'patient-front', 'patient').match(/68 hours/g)).toHaveLength(1);
  });

  test('a story of several lows says how deep the others were, where one went deeper', async () => {
    expect(said(await analysisOf('four-visits'), 'patient-front', 'patient')).toContain('And 2 more lows, down to 56.');
  });

  test('of more sessions than can be told apart the last are drawn, and that is said', () => {
    expect(said(crowd('a low every evening of 28 days'), 'agreed')).toContain('28 sessions, the last 14 drawn');
  });

  test('a heading of remarks stands only over remarks', () => {
    for (const name of ['a fortnight beside the one before', 'a low every evening, and 200 remarks'])
      expect(said(crowd(name), 'clock')).not.toMatch(/own words\n\d+ more/);
  });
});

test('where no night was low each one that was seen says so, and the row takes no height for bars', async () => {
  const { targets, measures } = await analysisOf('autumn-clock-change');
  if (!measures.nights.ok) throw new Error('no nights');
  const context = {
    speaker: speakerOf(wordsOf(), { unit: 'mmol/L', voice: 'clinic', targets }),
    targets,
    native: 'mmol/L' as const,
    text: 8.5,
  };
  const calm = nightBarsChart(measures.nights.value, 24, context);
  expect(calm.marks.filter((mark) => mark.kind === 'text' && mark.text === '0')).toHaveLength(14);
  expect(calm.height).toBeLessThan(30);
});

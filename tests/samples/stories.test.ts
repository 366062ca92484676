import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import type { Night } from '../../src/model/measures.ts';
import { analyseStory, held, inputsIn, percent, rowsAddUp, sampleData, storyNames } from './stories.ts';

/** Facts counted from the files by a spreadsheet's means, not by the program. */
interface Known {
  story: string;
  rows: { used: number; duplicate: number; setAside: number };
  /** Readings whose value lies beyond the sensor. */
  beyond: number;
  /** mg/dL, rounded; without the values beyond the sensor. */
  mean: number;
  /** Percent of readings, from the values themselves. */
  shares: { inRange: number; low: number; veryLow: number; high: number };
}

const table: Known[] = [
  {
    story: 'steady-fortnight',
    rows: { used: 6608, duplicate: 0, setAside: 0 },
    beyond: 0,
    mean: 144,
    shares: { inRange: 78.0, low: 2.0, veryLow: 0, high: 20.0 },
  },
  {
    story: 'autumn-clock-change',
    rows: { used: 6656, duplicate: 0, setAside: 0 },
    beyond: 0,
    mean: 150,
    shares: { inRange: 77.7, low: 0.1, veryLow: 0, high: 22.2 },
  },
  {
    story: 'pregnancy',
    rows: { used: 6630, duplicate: 0, setAside: 0 },
    beyond: 0,
    mean: 123,
    shares: { inRange: 68.7, low: 1.0, veryLow: 0, high: 30.3 },
  },
  {
    story: 'long-highs',
    rows: { used: 6551, duplicate: 0, setAside: 0 },
    beyond: 110,
    mean: 193,
    shares: { inRange: 48.8, low: 0, veryLow: 0, high: 51.2 },
  },
  {
    story: 'evening-exercise',
    rows: { used: 13_293, duplicate: 0, setAside: 0 },
    beyond: 0,
    mean: 135,
    shares: { inRange: 85.1, low: 3.7, veryLow: 0.2, high: 11.2 },
  },
  {
    story: 'four-visits',
    rows: { used: 2656, duplicate: 0, setAside: 0 },
    beyond: 0,
    mean: 159,
    shares: { inRange: 72.3, low: 0.6, veryLow: 0.1, high: 27.0 },
  },
  {
    story: 'thin-data',
    rows: { used: 1352, duplicate: 12, setAside: 13 },
    beyond: 0,
    mean: 153,
    shares: { inRange: 72.1, low: 0.6, veryLow: 0, high: 27.3 },
  },
];

const linesOf = (story: string): number =>
  inputsIn(join(sampleData, story), /\.(csv|tsv)$/)
    .map(({ bytes }) =>
      bytes[0] === 0xff ? new TextDecoder('utf-16le').decode(bytes) : new TextDecoder().decode(bytes),
    )
    .reduce((sum, text) => sum + text.split('\n').length - 1, 0);

function nightsOf(analysis: Analysis, states: Night['state'][]): string[] {
  const { nights } = analysis.measures;
  return nights.ok ? nights.value.filter((night) => states.includes(night.state)).map((night) => night.date) : [];
}

it('every story is counted', () => {
  expect(table.map(({ story }) => story).sort()).toEqual(storyNames);
});

describe.each(table)('$story', ({ story, rows, beyond, mean, shares }) => {
  const analysis = held(analyseStory(story));

  it('accounts for every line of its files', () => {
    expect(rowsAddUp(analysis.ledger)).toBe(true);
    expect(analysis.ledger.rows).toBe(linesOf(story));
    expect(analysis.ledger).toMatchObject(rows);
  });
  it('keeps readings beyond the sensor as such', () => {
    expect([...analysis.timeline.readings.limit].filter((limit) => limit !== 0)).toHaveLength(beyond);
  });
  it('has the mean and shares it was made with', () => {
    const { mean: measured, timeInBands } = analysis.measures;
    expect(measured.ok && Math.round(measured.value.mgdl.value)).toBe(mean);
    if (!timeInBands.ok) throw new Error(timeInBands.why);
    const { exclusive, cumulative } = timeInBands.value;
    expect(percent(exclusive['in-range'].value)).toBeCloseTo(shares.inRange, 0);
    expect(percent(cumulative.low.value)).toBeCloseTo(shares.low, 0);
    expect(percent(exclusive['very-low'].value)).toBeCloseTo(shares.veryLow, 0);
    expect(percent(cumulative.high.value)).toBeCloseTo(shares.high, 0);
  });
});

describe('evening-exercise', () => {
  const all = held(analyseStory('evening-exercise', { period: { from: '2026-04-13', to: '2026-05-10' } }));
  const hardWithoutFood = ['2026-04-14', '2026-04-25', '2026-04-28', '2026-05-04', '2026-05-08'];
  const nextDay = (date: string): string => new Date(Date.parse(date) + 86_400_000).toISOString().slice(0, 10);

  it('is low only in nights after hard exercise without extra food first', () => {
    expect(nightsOf(all, ['low', 'very-low'])).toEqual(hardWithoutFood.map(nextDay));
  });
  it('is very low in one night', () => {
    expect(nightsOf(all, ['very-low'])).toEqual(['2026-05-05']);
  });
  it('has its ten evenings of exercise as notes with minutes', () => {
    const bouts = all.timeline.notes.filter((note) => note.kind === 'exercise');
    expect(bouts.map((note) => note.minutes)).toEqual([55, 60, 45, 55, 50, 35, 65, 80, 40, 70]);
  });
  it('shows all 28 days by its own settings', () => {
    const { timeline } = held(analyseStory('evening-exercise'));
    expect([timeline.from, timeline.to, timeline.allDays.length]).toEqual(['2026-04-13', '2026-05-10', 28]);
  });
});

describe('single facts', () => {
  it('steady-fortnight: the pressed sensor is seen as a low of the night of 20 January', () => {
    expect(nightsOf(held(analyseStory('steady-fortnight')), ['low', 'very-low'])).toContain('2026-01-20');
  });
  it('autumn-clock-change: the day has 25 hours and none of them is lost', () => {
    const { timeline } = held(analyseStory('autumn-clock-change'));
    const sunday = timeline.days.find((day) => day.date === '2025-10-26');
    expect(sunday?.minutes).toBe(1500);
    // 03:00-03:59 twice, every three minutes.
    const doubled = Array.from(timeline.readings.minute.subarray(sunday!.from, sunday!.to)).filter(
      (minute) => minute >= 180 && minute < 240,
    );
    expect(doubled).toHaveLength(40);
    const { at } = timeline.readings;
    for (let i = sunday!.from + 1; i < sunday!.from + 100; i++) expect(at[i]! - at[i - 1]!).toBe(180_000);
  });
  it('autumn-clock-change: readings are classified and kept in mmol/L', () => {
    const { timeline } = held(analyseStory('autumn-clock-change'));
    expect(timeline.unit).toBe('mmol/L');
    expect(new Set(timeline.readings.unit)).toEqual(new Set([1]));
  });
  it('pregnancy: no estimate of A1C', () => {
    expect(held(analyseStory('pregnancy')).measures.gmi).toEqual({ ok: false, why: 'not-for-these-targets' });
  });
  it('thin-data: not enough, and no night is called free of lows', () => {
    const analysis = held(analyseStory('thin-data'));
    const { coverage } = analysis.measures;
    expect(coverage.ok && coverage.value.enough).toBe(false);
    expect(nightsOf(analysis, ['none-seen'])).toEqual([]);
  });
  it('long-highs: seventeen hours very high on 28 May', () => {
    const { highs } = held(analyseStory('long-highs')).measures;
    const longest = highs.ok ? Math.max(...highs.value.list.map((episode) => episode.outerMinutes)) : 0;
    expect(longest).toBeGreaterThanOrEqual(1050);
  });
  it.each(table.map(({ story }) => story))('%s: the settings name nobody but invented people', (story) => {
    expect(readFileSync(join(sampleData, story, 'settings.json'), 'utf8')).toContain('(invented)');
  });
});

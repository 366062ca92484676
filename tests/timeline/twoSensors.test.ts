import { describe, expect, it } from 'vitest';
import { MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { fileOf, type Row } from '../support/timeline.ts';

const FROM = Date.UTC(2026, 2, 2);
const PERIOD = { period: { from: '2026-03-02', to: '2026-03-15' } };

/** A sensor's readings every `every` minutes over hours `[from, to)`, `shift` minutes off the full hour. */
function sensor(native: number, from: number, to: number, shift: number, every = 5): Row[] {
  const rows: Row[] = [];
  for (let minute = from * 60 + shift; minute < to * 60; minute += every) {
    rows.push({ wall: FROM + minute * MINUTE_MS, native });
  }
  return rows;
}

/** Moved 3 to 12 minutes on, by steps that repeat only after a while. */
const scan = (row: Row, i: number): Row => ({ ...row, wall: row.wall + (3 + ((i * 7) % 10)) * MINUTE_MS });

describe('two sensors at once', () => {
  it.each([
    ['an old one longer', 0, 200, 188, 336, 100],
    ['a new one longer', 100, 200, 188, 336, 110],
  ])('%s: the other is set aside while both run', (_, oldFrom, oldTo, newFrom, newTo, kept) => {
    const old = sensor(100, oldFrom, oldTo, 0);
    const young = sensor(110, newFrom, newTo, 2);
    const inOne = buildTimeline([fileOf([...old, ...young])], PERIOD);
    const inTwo = buildTimeline([fileOf(young), fileOf(old)], PERIOD);
    for (const { timeline, issues, total } of [inOne, inTwo]) {
      const { readings } = timeline!;
      const during = [...readings.native].filter((_, i) => {
        const hour = (readings.at[i]! - FROM) / MINUTE_MS / 60;
        return hour > newFrom + 0.1 && hour < oldTo - 0.1;
      });
      expect(new Set(during)).toEqual(new Set([kept]));
      const notices = issues.filter(({ code }) => code === 'two-sensors');
      expect(notices.map(({ level, count }) => [level, count])).toEqual([['warning', total.setAside]]);
      expect(total.setAside).toBeGreaterThanOrEqual(142);
      expect(timeline!.mixed).toBe(false);
    }
    expect(inOne.timeline!.readings).toEqual(inTwo.timeline!.readings);
  });

  it('are seen though their clocks keep seconds and readings come some seconds early or late', () => {
    const late = (rows: Row[], seed: number) =>
      rows.map((row, i) => ({ ...row, wall: row.wall + ((i * seed) % 5) * 5000 }));
    const { timeline, total, issues } = buildTimeline(
      [fileOf(late(sensor(100, 0, 336, 0), 3)), fileOf(late(sensor(110, 300, 336, 2), 7))],
      PERIOD,
    );
    expect(issues.map(({ code }) => code)).toEqual(['two-sensors']);
    expect(new Set(timeline!.readings.native)).toEqual(new Set([100]));
    expect(total.setAside).toBe(432);
  });

  it('an earlier one that ended long before gives the young one no longer a wear', () => {
    // The first and the third stand at the same minutes of the hour; the second was worn longer than the third.
    const rows = [...sensor(90, 0, 50, 2), ...sensor(100, 60, 200, 0), ...sensor(110, 188, 230, 2)];
    const { timeline } = buildTimeline([fileOf(rows)], PERIOD);
    const { at, native } = timeline!.readings;
    const during = [...native].filter((_, i) => Math.abs((at[i]! - FROM) / MINUTE_MS / 60 - 194) < 5.5);
    expect(new Set(during)).toEqual(new Set([100]));
  });

  // Readings are seldom more than seconds apart by chance, and an interval has places for both at any distance.
  it.each([1, 10, 29, 30, 31, 60, 90, 150, 151, 240, 270, 290, 299])(
    'are kept apart at %d seconds from each other',
    (seconds) => {
      const rows = [...sensor(100, 0, 336, 0), ...sensor(60, 120, 216, seconds / 60)];
      const { timeline, issues, total } = buildTimeline([fileOf(rows)], PERIOD);
      expect(total).toMatchObject({ used: 4032, setAside: 1152 });
      expect(new Set(timeline!.readings.native)).toEqual(new Set([100]));
      expect(timeline!.mixed).toBe(false);
      expect(issues.map(({ code, count }) => [code, count])).toEqual([['two-sensors', 1152]]);
    },
  );

  /** How much makes two sensors is ours. */
  const pairs = (n: number, shift: number, every: number) =>
    [0, shift].flatMap((minute) => sensor(100 + minute, 50, 50 + (n * every) / 60, minute, every));
  const interleaved = (n: number, shift: number, every: number) => [
    ...sensor(100, 0, 336, 0, every),
    ...sensor(110, 50, 50 + (n * every) / 60, shift, every),
  ];
  it.each([
    ['ten readings of each beside one plain grid', interleaved(10, 2, 5), 10],
    ['nine, though for 50 minutes', interleaved(9, 2, 6), 0],
    ['45 and a half minutes beside one plain grid', interleaved(46, 0.5, 1), 46],
    ['44 and a half', interleaved(45, 0.5, 1), 0],
    ['twenty of each where the interval is a guess', pairs(20, 7, 20), 20],
    ['nineteen, though for more than six hours', pairs(19, 7, 20), 0],
    ['six hours and five minutes where the interval is a guess', pairs(25, 5, 15), 25],
    ['two minutes less than six hours', pairs(23, 6, 16), 0],
  ])('asks for long enough: %s', (_, rows, aside) => {
    const { issues, total } = buildTimeline([fileOf(rows)], PERIOD);
    expect(total.setAside).toBe(aside);
    expect(issues.filter(({ code }) => code === 'two-sensors').map(({ count }) => count)).toEqual(
      aside > 0 ? [aside] : [],
    );
  });

  it.each([
    [90, 16],
    [91, 0],
  ])('keep their distance to a tenth of the interval: %d of 900 seconds off, %d set aside', (seconds, aside) => {
    const late = (row: Row, i: number) => ({ ...row, wall: row.wall + (i < 8 ? 0 : seconds * 1000) });
    const rows = [...sensor(100, 0, 336, 0, 15), ...sensor(110, 50, 54, 6, 15).map(late)];
    expect(buildTimeline([fileOf(rows)], PERIOD).total.setAside).toBe(aside);
  });

  it.each([
    ['two hours is still worn, so it is the longer', 100, 100],
    ['two hours and five minutes has ended', 99.9, 110],
  ])('one with a pause of %s', (_, last, kept) => {
    const rows = [...sensor(100, 0, last + 0.01, 0), ...sensor(100, 102, 112, 0), ...sensor(110, 104, 125, 2)];
    const { at, native } = buildTimeline([fileOf(rows)], PERIOD).timeline!.readings;
    const during = [...native].filter((_, i) => Math.abs((at[i]! - FROM) / MINUTE_MS / 60 - 108) < 3.5);
    expect(new Set(during)).toEqual(new Set([kept]));
  });

  it('all the time: the first is used', () => {
    const { timeline, total } = buildTimeline(
      [fileOf(sensor(100, 0, 336, 1, 15)), fileOf(sensor(110, 0, 336, 6, 15))],
      PERIOD,
    );
    expect(new Set(timeline!.readings.native)).toEqual(new Set([100]));
    expect(total).toMatchObject({ used: 1344, setAside: 1344 });
    expect(timeline!.interval).toBe(15);
  });

  it.each([
    ['one sensor', sensor(100, 0, 336, 0)],
    ['one sensor dealt to two files', sensor(100, 0, 336, 0, 3)],
    ['readings in between now and then', [...sensor(100, 0, 336, 0, 15), ...sensor(110, 0, 336, 4, 60)]],
    ['readings in between for half an hour', [...sensor(100, 0, 336, 0), ...sensor(110, 50, 50.5, 2)]],
    ['every third reading missing', sensor(100, 0, 2, 0).filter((_, i) => i % 3 > 0)],
    ['every third reading missing for hours', sensor(100, 0, 5, 0).filter((_, i) => i % 3 > 0)],
    [
      'a hand-held reader used between all readings of an hour',
      [...sensor(100, 0, 336, 0, 15), ...sensor(110, 50, 51, 6, 15)],
    ],
    [
      'extra rows at any distance, half a day long',
      // The pattern of open data: a 15-minute stream with rows in between (person 2314 of the excerpt).
      [...sensor(100, 0, 336, 0, 15), ...sensor(110, 40, 52, 0, 15).map((row, i) => scan(row, i))],
    ],
    ['a change of interval', [...sensor(100, 0, 150, 0, 5), ...sensor(110, 150, 336, 0, 1)]],
  ])('is not seen in %s', (_, rows) => {
    const even = rows.filter((_, i) => i % 2 === 0);
    const odd = rows.filter((_, i) => i % 2 === 1);
    const { issues, total } = buildTimeline([fileOf(even), fileOf(odd)], PERIOD);
    expect(issues).toEqual([]);
    expect(total.used).toBe(rows.length);
  });
});

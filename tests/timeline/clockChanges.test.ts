import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { built, fileOf, type Row } from '../support/timeline.ts';

const wall = (text: string) => Date.parse(`${text}Z`);

/** Rows every `every` minutes of real time, with the wall clock of offsets that change at an instant. */
function through(from: string, hours: number, every: number, change: string, before: number, after: number): Row[] {
  const rows: Row[] = [];
  const start = wall(from);
  for (let at = start; at < start + hours * HOUR_MS; at += every * MINUTE_MS) {
    const offset = at < wall(change) ? before : after;
    rows.push({ wall: at + offset * MINUTE_MS, native: 100 + ((at / MINUTE_MS) % 97) });
  }
  return rows;
}

// Zone, a stretch of two days, and the change in it as the IANA tz database 2025b lists it.
const NIGHTS: [zone: string, from: string, change: string, before: number, after: number][] = [
  ['Europe/Helsinki', '2025-03-29T00:00', '2025-03-30T01:00', 120, 180],
  ['Europe/Helsinki', '2025-10-25T00:00', '2025-10-26T01:00', 180, 120],
  ['America/New_York', '2025-03-08T12:00', '2025-03-09T07:00', -300, -240],
  ['America/New_York', '2025-11-01T12:00', '2025-11-02T06:00', -240, -300],
  ['Australia/Lord_Howe', '2025-04-05T00:00', '2025-04-05T15:00', 660, 630],
  ['Australia/Lord_Howe', '2025-10-04T00:00', '2025-10-04T15:30', 630, 660],
  ['America/Havana', '2025-11-01T12:00', '2025-11-02T05:00', -240, -300],
];

describe.each([1, 5, 15])('a stream of %d minutes through a night of clock change', (every) => {
  it.each(NIGHTS)('%s from %s', (zone, from, change, before, after) => {
    const rows = through(from, 48, every, change, before, after);
    const expected = rows.map((_, i) => wall(from) + i * every * MINUTE_MS);
    for (const order of [rows, rows.toReversed()]) {
      const { timeline, issues } = buildTimeline([fileOf(order)], { zone, period: { days: 5 } });
      expect([...timeline!.readings.at]).toEqual(expected);
      expect(issues).toEqual([]);
      expect(timeline!.gaps.filter(({ kind }) => kind !== 'edge')).toEqual([]);
    }
  });
});

it('gives the changed days 23 and 25 hours, and all their readings', () => {
  for (const [from, change, before, after, minutes] of [
    ['2025-03-27T22:00', '2025-03-30T01:00', 120, 180, 1380],
    ['2025-10-23T21:00', '2025-10-26T01:00', 180, 120, 1500],
  ] as const) {
    const rows = through(from, 24 * 5, 5, change, before, after);
    const { days, readings } = built([fileOf(rows)], { zone: 'Europe/Helsinki' });
    const changed = days.find((day) => day.minutes !== 1440)!;
    expect(changed.date).toBe(change.slice(0, 10));
    expect(changed.minutes).toBe(minutes);
    expect(changed.to - changed.from).toBe(minutes / 5);
    // The hours before and after the change keep the wall clock.
    expect(readings.minute[changed.from]).toBe(0);
    expect(readings.minute[changed.to - 1]).toBe(1435);
  }
});

describe('an hour the clocks showed twice, passed once', () => {
  const helsinki = (rows: Row[]) => buildTimeline([fileOf(rows)], { zone: 'Europe/Helsinki' });
  const every5 = (from: string, to: string): Row[] => {
    const rows: Row[] = [];
    for (let at = wall(from); at < wall(to); at += 5 * MINUTE_MS) rows.push({ wall: at, native: 100 });
    return rows;
  };

  it.each([
    ['joins what came before', '2025-10-26T02:00', '2025-10-26T03:40', '2025-10-26T00:00', []],
    ['joins what comes after', '2025-10-26T03:20', '2025-10-26T06:00', '2025-10-26T01:20', []],
    [
      'joins both: the first pass, and said so',
      '2025-10-26T02:00',
      '2025-10-26T06:00',
      '2025-10-26T00:00',
      ['doubled-hour'],
    ],
    [
      'joins neither: the first pass, and said so',
      '2025-10-26T03:10',
      '2025-10-26T03:50',
      '2025-10-26T00:10',
      ['doubled-hour'],
    ],
  ])('%s', (_, from, to, first, codes) => {
    const { timeline, issues } = helsinki(every5(from, to));
    const inHour = [...timeline!.readings.at].find((_, i) => Math.floor(timeline!.readings.minute[i]! / 60) === 3);
    expect(inHour).toBe(wall(first));
    expect(issues.map(({ code }) => code)).toEqual(codes);
  });

  it('a file whose rows are in no order keeps no row of that hour that it cannot place', () => {
    const twice = through('2025-10-25T22:00', 6, 5, '2025-10-26T01:00', 180, 120);
    const mixed = [...twice.filter((_, i) => i % 2 === 0).toReversed(), ...twice.filter((_, i) => i % 2 === 1)];
    const { timeline, total } = helsinki(mixed);
    expect(total.used + total.setAside + total.duplicate).toBe(mixed.length);
    for (const at of timeline!.readings.at)
      expect(twice.some((row) => Math.abs(row.wall - at) <= 3 * HOUR_MS)).toBe(true);
  });
});

it('without a zone never mixes the two passes, and names the option that puts them right', () => {
  for (const seconds of [0, 130]) {
    const night = through('2025-10-24T21:00', 72, 5, '2025-10-26T01:00', 180, 120);
    const rows = night.map((row, i) => ({ native: 100 + (i % 37), wall: row.wall + (i >= 336 ? seconds * 1000 : 0) }));
    const { timeline, issues, total } = buildTimeline([fileOf(rows)], { period: { days: 4 } });
    const notice = issues.find(({ code }) => code === 'clock-set-back-written');
    expect(notice).toMatchObject({
      question: { of: 'zone' },
      actual: seconds === 0 ? '2025-10-26 03:00' : '2025-10-26 03:02',
    });
    expect(total.setAside).toBeGreaterThanOrEqual(12);
    const { at, weight } = timeline!.readings;
    for (let i = 1; i < at.length; i++) expect((at[i]! - at[i - 1]!) / MINUTE_MS).toBeGreaterThan(2);
    expect(weight.reduce((sum, minutes) => sum + minutes, 0)).toBeLessThanOrEqual(72 * 60);
  }
});

it('sets aside times in an hour the clocks skipped, once for all, naming the first', () => {
  const rows: Row[] = [];
  for (let at = wall('2025-03-30T00:00'); at < wall('2025-03-30T08:00'); at += 15 * MINUTE_MS) {
    rows.push({ wall: at, native: 120 });
  }
  const { timeline, issues, total } = buildTimeline([fileOf(rows)], { zone: 'Europe/Helsinki' });
  expect(issues).toEqual([
    {
      code: 'skipped-hour',
      level: 'warning',
      origin: { file: 'made.csv', line: 14 },
      actual: '2025-03-30 03:00',
      count: 4,
    },
  ]);
  expect(total).toMatchObject({ rows: 32, used: 28, setAside: 4 });
  expect(timeline!.readings.count).toBe(28);
});

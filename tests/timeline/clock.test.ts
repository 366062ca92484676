import { describe, expect, it } from 'vitest';
import type { ReadFile } from '../../src/model/input.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { inWords } from '../support/inWords.ts';
import { built, fileOf, type Row } from '../support/timeline.ts';

const wall = (text: string) => Date.parse(`${text}Z`);

/** Two days of readings every 15 minutes, each with the offset given for its time. */
function withOffsets(from: string, hours: number, offsetOf: (at: number) => number): Row[] {
  const rows: Row[] = [];
  for (let at = wall(from); at < wall(from) + hours * HOUR_MS; at += 15 * MINUTE_MS) {
    const offset = offsetOf(at);
    rows.push({ wall: at + offset * MINUTE_MS, offset, native: 110 });
  }
  return rows;
}

const codes = (files: ReadFile[], settings = {}) => buildTimeline(files, settings).issues.map(({ code }) => code);
const plain: Row[] = [0, 5, 10].map((m) => ({ wall: wall('2026-03-02T08:00') + m * MINUTE_MS, native: 100 }));

describe('which clock', () => {
  it('takes the clock as written when nothing says more', () => {
    const { zone, readings, days } = built([fileOf(plain)]);
    expect(zone).toBeNull();
    expect(readings.at[0]).toBe(plain[0]!.wall);
    expect(days.at(-1)!.minutes).toBe(1440);
  });

  it('takes the zone a file names, and the user before the file', () => {
    const file = { ...fileOf(plain), zone: 'Europe/Helsinki' };
    expect(built([file]).zone).toBe('Europe/Helsinki');
    expect(built([file]).readings.at[0]).toBe(wall('2026-03-02T06:00'));
    expect(built([file], { zone: 'America/New_York' }).readings.at[0]).toBe(wall('2026-03-02T13:00'));
  });

  it.each([
    ['a zone nobody knows', [fileOf(plain)], { zone: 'Mars/Base' }, ['unknown-zone']],
    ['an abbreviation', [{ ...fileOf(plain), zone: 'EST' }], {}, ['unknown-zone']],
    [
      'files with two zones',
      [
        { ...fileOf(plain), zone: 'Europe/Oslo' },
        { ...fileOf(plain), zone: 'Asia/Tokyo' },
      ],
      {},
      ['zones-differ'],
    ],
    ['offsets on some rows only', [fileOf([...plain, { wall: 0, offset: 60, native: 100 }])], {}, ['offsets-missing']],
  ])('refuses %s', (_, files, settings, expected) => {
    expect(codes(files, settings)).toEqual(expected);
    expect(buildTimeline(files, settings).timeline).toBeNull();
  });

  it('refuses times that are all in world time, and shows one of them on several clocks', () => {
    const rows = withOffsets('2026-03-02T00:00', 48, () => 0);
    const { timeline, issues } = buildTimeline([fileOf(rows)], {});
    expect(timeline).toBeNull();
    expect(issues.map(inWords)).toEqual([
      {
        code: 'clock-utc',
        level: 'refusal',
        origin: { file: 'made.csv', line: 2 },
        actual: '2026-03-02 00:00',
        // IANA: Helsinki is 2 hours ahead of world time in winter, New York 5 behind.
        expected: '2026-03-02 02:00 (Europe/Helsinki); 2026-03-01 19:00 (America/New_York)',
        option: '--zone',
        count: 192,
      },
    ]);
    expect(codes([fileOf(rows)], { zone: 'Europe/Helsinki' })).toEqual([]);
    expect(built([fileOf(rows)], { zone: 'UTC' }).readings.minute[0]).toBe(0);
  });

  it('refuses a file in world time beside one with offsets that does not settle it, and shows those offsets', () => {
    const utc = fileOf(
      withOffsets('2026-03-02T00:00', 24, () => 0),
      [],
      '2026-03-02',
      'utc.csv',
    );
    const later = fileOf(withOffsets('2026-03-12T00:00', 24, () => 330));
    expect(buildTimeline([later, utc], {}).issues.map(inWords)).toMatchObject([
      { code: 'clock-utc', origin: { file: 'utc.csv', line: 2 }, expected: '2026-03-02 05:30 (+05:30)' },
    ]);
  });

  it('shows no more than two of the offsets that do not settle it', () => {
    const utc = fileOf(withOffsets('2026-03-02T00:00', 24, () => 0));
    const later = [330, 345, 480].map((offset, day) =>
      fileOf(withOffsets(`2026-03-1${2 + 2 * day}T00:00`, 24, () => offset)),
    );
    expect(buildTimeline([...later, utc], {}).issues.map(inWords)).toMatchObject([
      { code: 'clock-utc', expected: '2026-03-02 05:30 (+05:30); 2026-03-02 05:45 (+05:45)' },
    ]);
  });

  it('places rows with offsets as instants when the zone is given', () => {
    const rows = withOffsets('2026-03-02T00:00', 48, () => 0);
    const { readings, days } = built([fileOf(rows)], { zone: 'Asia/Kathmandu' });
    expect(readings.at[0]).toBe(wall('2026-03-02T00:00'));
    expect(readings.minute[0]).toBe(5 * 60 + 45);
    expect(days.at(-1)!.date).toBe('2026-03-04');
  });
});

describe('offsets without a zone', () => {
  it('show the local clock of the rows and keep real time', () => {
    // Helsinki's change of 2025-03-30T01:00Z, told by the offsets alone.
    const rows = withOffsets('2025-03-29T00:00', 72, (at) => (at < wall('2025-03-30T01:00') ? 120 : 180));
    const { timeline, issues } = buildTimeline([fileOf(rows)], {});
    const { readings, days } = timeline!;
    expect(issues.map(({ code, level, actual }) => [code, level, actual])).toEqual([
      ['offsets-change', 'note', ['+02:00', '+03:00']],
    ]);
    expect([...readings.at]).toEqual(rows.map(({ wall, offset }) => wall - offset! * MINUTE_MS));
    rows.forEach((row, i) => {
      expect(readings.minute[i]).toBe((row.wall % DAY_MS) / MINUTE_MS);
    });
    expect(days.find(({ date }) => date === '2025-03-30')!.minutes).toBe(1380);
  });

  it('follow a traveller, with days in one order even where a date is lived twice', () => {
    // Tokyo to Los Angeles: +09:00, then -08:00 from early on 4 March in Tokyo, which is still 3 March there.
    const rows = withOffsets('2026-03-01T00:00', 120, (at) => (at < wall('2026-03-03T16:00') ? 540 : -480));
    const { readings, days } = built([fileOf(rows)]);
    for (let i = 1; i < readings.count; i++) expect(readings.day[i]! >= readings.day[i - 1]!).toBe(true);
    for (const [d, day] of days.entries()) {
      for (let i = day.from; i < day.to; i++) expect(readings.day[i]).toBe(d);
      const next = days[d + 1];
      if (next) expect(day.start + day.minutes * MINUTE_MS).toBe(next.start);
    }
    expect(days.at(-1)!.to).toBe(rows.length);
  });

  it('keep an evening that comes twice on its own day', () => {
    // Santiago's clocks went from midnight back to 23:00 on 2025-04-05; no reading stands at the very moment.
    const change = wall('2025-04-06T03:00');
    const rows = withOffsets('2025-04-05T06:07', 48, (at) => (at < change ? -180 : -240));
    const { readings, days } = built([fileOf(rows)]);
    expect(days.map(({ date, minutes }) => [date, minutes]).at(-2)).toEqual(['2025-04-06', 1440]);
    for (let i = 0; i < readings.count; i++) {
      const written = new Date(rows[i]!.wall).toISOString().slice(0, 10);
      expect(days[readings.day[i]!]!.date).toBe(written);
    }
    expect(days.find(({ date }) => date === '2025-04-05')!.minutes).toBe(1500);
  });

  it('refuse two exports that disagree about the offset in turns', () => {
    const one = withOffsets('2026-03-02T00:00', 48, () => 60).filter((_, i) => i % 2 === 0);
    const other = withOffsets('2026-03-02T00:00', 48, () => 120).filter((_, i) => i % 2 === 1);
    expect(codes([fileOf(one), fileOf(other)])).toEqual(['offsets-disagree']);
  });
});

describe('whose readings', () => {
  it.each([
    [['A-17'], ['A-17'], true],
    [['A-17'], ['A-17 '], true],
    [['A-17'], [], true],
    [['A-17'], ['B-02'], false],
    [['A-17', 'B-02'], [], false],
  ])('%j and %j may be joined: %s', (first, second, may) => {
    const files = [
      { ...fileOf(plain), persons: first },
      { ...fileOf(plain), persons: second },
    ];
    const { timeline, issues, total } = buildTimeline(files, {});
    expect(timeline !== null).toBe(may);
    expect(issues.some(({ code }) => code === 'two-persons')).toBe(!may);
    expect(total.rows).toBe(6);
  });
});

import { describe, expect, it } from 'vitest';
import type { RowFate } from '../../src/model/input.ts';
import { MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { MGDL_PER_MMOL } from '../../src/units.ts';
import { built, fileOf, type NoteOn, type Row } from '../support/timeline.ts';

/** Where every row went: what a person is told of rows that were not used has to be complete and true. */

const FROM = Date.UTC(2026, 2, 2);
const at = (minute: number, more: Partial<Row> = {}): Row => ({
  wall: FROM + minute * MINUTE_MS,
  native: 100,
  ...more,
});

describe('rows set aside', () => {
  it('are listed in order of lines with what they said and why', () => {
    const rows = [
      at(0),
      at(5, { native: 40, limit: -1 }),
      at(5, { native: 120 }),
      at(10, { native: Number.NaN, limit: 1 }),
      at(10, { native: 11.1, unit: 'mmol/L' }),
      at(15),
    ];
    const file = fileOf(rows, [], undefined, 'a.csv');
    file.faults.push(
      { line: 9, code: 'time-unreadable', actual: 'x' },
      { line: 1, code: 'time-unreadable', actual: 'y' },
    );
    expect(buildTimeline([file, fileOf([at(20)], [], undefined, 'b.csv')], {}).setAside).toEqual([
      { file: 'a.csv', line: 1, code: 'time-unreadable', actual: 'y' },
      { file: 'a.csv', line: 3, code: 'row-contradicts', actual: '2026-03-02 00:05 < 40 mg/dL' },
      { file: 'a.csv', line: 4, code: 'row-contradicts', actual: '2026-03-02 00:05 120 mg/dL' },
      { file: 'a.csv', line: 5, code: 'row-contradicts', actual: '2026-03-02 00:10 > ? mg/dL' },
      { file: 'a.csv', line: 6, code: 'row-contradicts', actual: '2026-03-02 00:10 11.1 mmol/L' },
      { file: 'a.csv', line: 9, code: 'time-unreadable', actual: 'x' },
    ]);
  });

  it('hold what stood in a skipped hour, notes too, and no copies', () => {
    // Helsinki had no three o'clock on 30 March 2025.
    const spring = (minute: number) => ({ wall: Date.UTC(2025, 2, 30) + minute * MINUTE_MS, native: 100 });
    const notes: NoteOn[] = [
      { day: 0, minute: 60, kind: 'meal' },
      { day: 0, minute: 60, kind: 'meal' },
      { day: 0, minute: 200, kind: 'meal' },
    ];
    const file = fileOf([spring(170), spring(190), spring(245), spring(245)], notes, '2025-03-30', 'a.csv');
    expect(buildTimeline([file], { zone: 'Europe/Helsinki' }).setAside).toEqual([
      { file: 'a.csv', line: 3, code: 'row-in-skipped-hour', actual: '2025-03-30 03:10 100 mg/dL' },
      { file: 'a.csv', line: 8, code: 'skipped-hour-note' },
    ]);
  });

  it('of a second sensor are listed as such', () => {
    const two = Array.from({ length: 40 }, (_, k) => [at(k * 5), at(k * 5 + 2, { native: 140 })]).flat();
    const long = Array.from({ length: 200 }, (_, k) => at(200 + k * 5));
    const { setAside, total } = buildTimeline([fileOf([...two, ...long])], {});
    expect(new Set(setAside.map(({ code }) => code))).toEqual(new Set(['row-of-other-sensor']));
    expect(setAside).toHaveLength(total.setAside);
    expect(total.setAside).toBe(40);
  });
});

describe('the fate of a row', () => {
  const totalOf = (rows: Row[], notes: NoteOn[], rowOf: number, ...fates: RowFate[]) => {
    const file = fileOf(rows, notes);
    for (const note of file.notes) note.row = rowOf;
    file.fates = fates;
    return buildTimeline([file], {}).total;
  };

  it('is used where one of its entries was, whatever the others became', () => {
    const note: NoteOn = { day: 0, minute: 0, kind: 'meal' };
    const one = { rows: 1, used: 1, duplicate: 0, setAside: 0, notes: 0, ignored: 0 };
    expect(totalOf([at(0)], [note], 0, 'used')).toEqual(one);
    expect(totalOf([at(0)], [note], 0, 'note')).toEqual(one);
  });

  it('is a copy where its note was, though its reading was set aside', () => {
    const note: NoteOn = { day: 0, minute: 0, kind: 'meal' };
    const file = fileOf([at(0), at(5), at(5, { native: 180 })], [note, note]);
    file.notes[1]!.row = 2;
    file.fates.pop();
    expect(buildTimeline([file], {}).total).toMatchObject({ used: 1, setAside: 1, duplicate: 1, notes: 1 });
  });

  it('stays what the reader said where it holds no entry', () => {
    expect(totalOf([at(0)], [], 0, 'used', 'ignored', 'ignored', 'set-aside')).toMatchObject({
      used: 1,
      ignored: 2,
      setAside: 1,
    });
  });

  it('is used in the file given first, and a copy in the other', () => {
    const first = fileOf([at(0), at(10), at(20)], [], undefined, 'a.csv');
    const second = fileOf([at(5), at(10), at(15)], [], undefined, 'b.csv');
    expect(buildTimeline([first, second], {}).ledgers.map(({ ledger }) => [ledger.used, ledger.duplicate])).toEqual([
      [3, 0],
      [2, 1],
    ]);
  });
});

describe('units', () => {
  const mmol = (minute: number, native: number) => at(minute, { native, unit: 'mmol/L' });

  it('stand as in the file, and are put into mg/dL beside it (molar mass of glucose 180.156)', () => {
    const { readings, unit } = built([fileOf([mmol(0, 5.5), mmol(5, 3.9), at(10, { native: 99 })])]);
    expect([...readings.native]).toEqual([5.5, 3.9, 99]);
    expect([...readings.unit]).toEqual([1, 1, 0]);
    expect([...readings.mgdl]).toEqual([expect.closeTo(99.0858, 4), expect.closeTo(70.26084, 4), 99]);
    expect(MGDL_PER_MMOL).toBeCloseTo(18.0156, 9);
    expect(unit).toBe('mmol/L');
  });

  it.each([
    [3, 0, 'mg/dL', null],
    [0, 3, 'mmol/L', null],
    [3, 2, 'mg/dL', 2],
    [1, 3, 'mmol/L', 1],
    [2, 2, 'mg/dL', 2],
  ] as const)(
    'of %i in mg/dL and %i in mmol/L people see %s, and how many others there are',
    (mg, mm, unit, others) => {
      const rows = [
        ...Array.from({ length: mg }, (_, k) => at(k * 5)),
        ...Array.from({ length: mm }, (_, k) => mmol(60 + k * 5, 5.5)),
      ];
      const { timeline, issues } = buildTimeline([fileOf(rows)], {});
      expect(timeline!.unit).toBe(unit);
      const mixed = issues.filter(({ code }) => code === 'units-mixed');
      expect(mixed.map(({ expected, count }) => [expected, count])).toEqual(others === null ? [] : [[unit, others]]);
    },
  );
});

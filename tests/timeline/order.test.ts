import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../src/model/timeline.ts';
import { MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { fileOf, type NoteOn, type Row, rowsOf } from '../support/timeline.ts';

const FROM = Date.UTC(2026, 2, 2);
const SETTINGS = { zone: 'Europe/Helsinki', period: { from: '2026-03-02', to: '2026-03-08' } };

/** Readings of two days on a grid of five minutes, with clashes, both units and bounds. */
const rows = fc.array(
  fc.record({
    wall: fc.integer({ min: 0, max: 2 * 288 - 1 }).map((step) => FROM + step * 5 * MINUTE_MS),
    native: fc.constantFrom(40, 70, 100, 181, Number.NaN),
    unit: fc.constantFrom('mg/dL' as const, 'mmol/L' as const),
    limit: fc.constantFrom(0 as const, 0 as const, 1 as const, -1 as const),
  }),
  { minLength: 1, maxLength: 60 },
);
const sane = rows.map((given): Row[] =>
  given.map((row) => {
    const native = Number.isNaN(row.native) && row.limit === 0 ? 100 : row.native;
    return { ...row, native: row.unit === 'mmol/L' ? native / 20 : native };
  }),
);
const notes = fc.array(
  fc.record({
    day: fc.integer({ min: 0, max: 8 }),
    minute: fc.constantFrom(0, 480, 481),
    kind: fc.constant('meal' as const),
  }),
  { maxLength: 6 },
) as fc.Arbitrary<NoteOn[]>;

/** A way to deal rows out: their order, and the file each goes to. */
const dealing = fc.record({ seed: fc.integer({ min: 1, max: 2 ** 30 }), files: fc.integer({ min: 1, max: 4 }) });

function deal<T>(items: T[], { seed, files }: { seed: number; files: number }): T[][] {
  const next = () => {
    seed = (seed * 48271) % 2147483647;
    return seed;
  };
  const mixed = [...items];
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = next() % (i + 1);
    [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
  }
  const dealt: T[][] = Array.from({ length: files }, () => []);
  for (const item of mixed) dealt[next() % files]!.push(item);
  return dealt;
}

/** What must not depend on order: everything but the issues and where a note was written. */
function substance(timeline: Timeline | null) {
  if (!timeline) return null;
  const { issues: _, notes, ...rest } = timeline;
  return { ...rest, notes: notes.map(({ origin: _, row: __, ...note }) => note) };
}

describe('the order of files and rows', () => {
  it('changes nothing, however the rows are dealt out', () => {
    fc.assert(
      fc.property(sane, notes, dealing, (given, noted, how) => {
        const whole = buildTimeline([fileOf(given, noted)], SETTINGS);
        const parts = deal(given, how).map((part, f) => fileOf(part, f === 0 ? noted : [], undefined, `part-${f}.csv`));
        const dealt = buildTimeline(parts, SETTINGS);
        expect(substance(dealt.timeline)).toEqual(substance(whole.timeline));
        expect(dealt.total).toEqual(whole.total);
      }),
      { numRuns: 150 },
    );
  });

  it('changes nothing when everything is given twice, but for the duplicates', () => {
    fc.assert(
      fc.property(sane, notes, (given, noted) => {
        const once = buildTimeline([fileOf(given, noted)], SETTINGS);
        const twice = buildTimeline([fileOf(given, noted), fileOf(given.toReversed(), noted)], SETTINGS);
        expect(substance(twice.timeline)).toEqual(substance(once.timeline));
        if (!once.timeline) return;
        const { used, notes, setAside, duplicate } = once.total;
        expect(twice.total).toMatchObject({ used, notes, setAside, rows: 2 * once.total.rows });
        expect(twice.total.duplicate).toBe(2 * duplicate + used + notes + setAside);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the ledger', () => {
  it('adds up, for each file and in total, and leaves the inputs alone', () => {
    fc.assert(
      fc.property(sane, notes, dealing, fc.boolean(), (given, noted, how, valid) => {
        const files = deal(given, how).map((part, f) => {
          const file = fileOf(part, f === 0 ? noted : []);
          file.fates.push('ignored', 'set-aside');
          return file;
        });
        const before = JSON.stringify(files);
        const { ledgers, total, timeline } = buildTimeline(files, valid ? SETTINGS : { zone: 'nowhere' });
        expect(JSON.stringify(files)).toBe(before);
        for (const { rows, used, duplicate, setAside, notes, ignored } of [
          total,
          ...ledgers.map(({ ledger }) => ledger),
        ]) {
          expect(used + duplicate + setAside + notes + ignored).toBe(rows);
        }
        expect(ledgers.map(({ ledger }) => ledger.rows)).toEqual(files.map(({ fates }) => fates.length));
        if (timeline) expect(total.used).toBe(timeline.readings.count);
      }),
      { numRuns: 100 },
    );
  });

  it('keeps the strongest fate of a record with several entries', () => {
    // One record with a reading and a note; the reading repeats another, so the record is a note's.
    const reading: Row = { wall: FROM, native: 100 };
    const file = fileOf([reading, reading], [{ day: 0, minute: 0, kind: 'meal' }]);
    file.notes[0]!.row = 1;
    file.fates.pop();
    expect(buildTimeline([file], {}).total).toEqual({
      rows: 2,
      used: 1,
      duplicate: 0,
      setAside: 0,
      notes: 1,
      ignored: 0,
    });
  });
});

describe('a clock set back', () => {
  const week = rowsOf({ days: 3, value: () => 100 });
  const moved = (rows: Row[], from: number, minutes: number): Row[] =>
    rows.map((row, i) => (i < from ? row : { ...row, wall: row.wall - minutes * MINUTE_MS - 1000, native: 101 }));
  const back = 'clock-set-back-written';
  const set = [back, 'two-sensors'];

  it.each([
    ['by two hours, told as two rows side by side as well', moved(week, 400, 120), set],
    ['by two hours, newest first', moved(week, 400, 120).toReversed(), set],
    ['at the last reading but one, newest first', moved(week, 862, 120).toReversed(), [back]],
    ['by ten minutes', moved(week, 400, 15), [back]],
    ['by nine minutes: jitter', moved(week, 400, 14), []],
    ['by five minutes: jitter', moved(week, 400, 5), []],
    ['three times', [200, 400, 600].reduce((rows, k) => moved(rows, k, 15), week), [back, back, back]],
    ['four times: a file in no order', [200, 400, 600, 800].reduce((rows, k) => moved(rows, k, 15), week), []],
    ['never, with a morning repeated', [...week.slice(0, 400), ...week.slice(330, 400), ...week.slice(400)], []],
    ['never, newest first', week.toReversed(), []],
    ['never, in two blocks, the later first', [...week.slice(300), ...week.slice(0, 300)], []],
    ['never, with the first day repeated', [...week, ...week.slice(0, 288)], []],
    ['never, in no order', deal(week, { seed: 5, files: 1 })[0]!, []],
  ])('%s', (_, rows, codes) => {
    const { issues } = buildTimeline([fileOf(rows)], {});
    expect(issues.map(({ code }) => code)).toEqual(codes);
  });

  it('is told with the line where it happened', () => {
    const { issues } = buildTimeline([fileOf(moved(week, 400, 120))], { zone: 'Europe/Helsinki' });
    expect(issues.filter(({ code }) => code !== 'two-sensors')).toEqual([
      { code: 'clock-set-back', level: 'warning', origin: { file: 'made.csv', line: 402 }, actual: '2026-03-03 07:19' },
    ]);
  });
});

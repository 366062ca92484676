import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { built, fileOf, type NoteOn, rowsOf, timelineOf } from '../support/timeline.ts';

const value = () => 100;

describe('notes', () => {
  it('stand on their day, in order of time, with the minute of the wall clock', () => {
    const { notes, days } = timelineOf({
      days: 3,
      value,
      zone: 'America/New_York',
      notes: [
        { day: 2, minute: 1439, kind: 'exercise', minutes: 30 },
        { day: 0, minute: 480, kind: 'meal', amount: 45, unit: 'g' },
        { day: 1, kind: 'text', text: 'felt unwell' },
      ],
    });
    expect(notes.map(({ day, minute, kind, timed }) => [day, minute, kind, timed])).toEqual([
      [0, 480, 'meal', true],
      [1, 0, 'text', false],
      [2, 1439, 'exercise', true],
    ]);
    expect(notes[0]!.at).toBe(days[0]!.start + 8 * HOUR_MS);
    expect(notes[1]!.at).toBe(days[1]!.start);
  });

  it('are counted once when two exports hold them, but not when they differ', () => {
    const meal: NoteOn = { day: 0, minute: 480, kind: 'meal', amount: 45, unit: 'g' };
    const rows = rowsOf({ days: 1, value });
    const { timeline, total } = buildTimeline(
      [fileOf(rows, [meal]), fileOf(rows, [meal, { ...meal, amount: 20 }])],
      {},
    );
    expect(timeline!.notes.map(({ amount }) => amount).sort()).toEqual([20, 45]);
    expect(total).toMatchObject({ notes: 2, duplicate: 288 + 1 });
  });

  it('of one minute, kind and amount are told apart by all their words, and each is counted once', () => {
    const said = (text: string): NoteOn => ({ day: 0, minute: 480, kind: 'text', text });
    const rows = rowsOf({ days: 1, value });
    const file = fileOf(rows, [said('b'), said('a'), said('b'), said('c'), said('a'), said('c')]);
    const { timeline, total } = buildTimeline([file], {});
    expect(timeline!.notes.map(({ text }) => text)).toEqual(['a', 'b', 'c']);
    expect(total).toMatchObject({ notes: 3, duplicate: 3 });
  });

  it('are ordered by kind where they share a minute', () => {
    const kinds = ['text', 'meal', 'insulin', 'exercise'] as const;
    const { notes } = timelineOf({ days: 1, value, notes: kinds.map((kind) => ({ day: 0, minute: 480, kind })) });
    expect(notes.map(({ kind }) => kind)).toEqual(['exercise', 'insulin', 'meal', 'text']);
  });

  it('in a skipped hour are set aside, in a doubled one take the first pass', () => {
    const rows = rowsOf({ from: '2025-10-25', days: 2, value });
    const spring = buildTimeline(
      [fileOf(rowsOf({ from: '2025-03-29', days: 1, value }), [{ day: 1, minute: 195, kind: 'meal' }], '2025-03-29')],
      { zone: 'Europe/Helsinki' },
    );
    expect(spring.issues.map(({ code, origin }) => [code, origin?.line])).toEqual([['skipped-hour-note', 290]]);
    expect(spring.total).toMatchObject({ notes: 0, setAside: 1 });
    const autumn = built([fileOf(rows, [{ day: 1, minute: 210, kind: 'meal' }], '2025-10-25')], {
      zone: 'Europe/Helsinki',
    });
    expect(autumn.notes[0]!.at).toBe(Date.UTC(2025, 9, 26, 0, 30));
    expect(autumn.notes[0]!.minute).toBe(210);
  });

  it('keep the wearer’s wall clock beside readings that have offsets', () => {
    const rows = rowsOf({ days: 2, value }).map((row) => ({ ...row, offset: 120 }));
    const { notes, days } = built([fileOf(rows, [{ day: 1, minute: 480, kind: 'meal' }])]);
    expect(notes[0]).toMatchObject({ day: 13, minute: 480 });
    expect(notes[0]!.at - days[13]!.start).toBe(480 * MINUTE_MS);
  });

  it('with an offset of their own are instants beside readings with offsets', () => {
    const rows = rowsOf({ days: 2, value }).map((row) => ({ ...row, offset: 120 }));
    const file = fileOf(rows, [{ day: 1, minute: 480, kind: 'meal' }]);
    file.notes[0]!.offset = 0;
    expect(built([file]).notes[0]).toMatchObject({ day: 13, minute: 600 });
  });

  it('with an offset beside readings without are taken as written, with a warning', () => {
    const file = fileOf(rowsOf({ days: 2, value }), [{ day: 1, minute: 480, kind: 'meal' }]);
    file.notes[0]!.offset = 120;
    const { timeline, issues } = buildTimeline([file], {});
    expect(timeline!.notes[0]).toMatchObject({ day: 13, minute: 480 });
    expect(issues).toEqual([{ code: 'note-offsets', level: 'warning', count: 1, question: { of: 'zone' } }]);
  });

  it('in world time beside readings as written ask for the zone', () => {
    const file = fileOf(rowsOf({ days: 2, value }), [{ day: 1, minute: 480, kind: 'meal' }]);
    file.notes[0]!.offset = 0;
    expect(buildTimeline([file], {}).issues).toMatchObject([{ code: 'clock-utc', level: 'refusal', count: 1 }]);
  });

  it('in world time ask for it also beside others without an offset, and not where they have no time', () => {
    const file = () =>
      fileOf(rowsOf({ days: 2, value }), [
        { day: 1, minute: 480, kind: 'meal' },
        { day: 1, kind: 'text' },
      ]);
    const mixed = file();
    mixed.notes[0]!.offset = 0;
    expect(buildTimeline([mixed], {}).issues).toMatchObject([{ code: 'clock-utc', count: 1 }]);
    const untimed = file();
    untimed.notes[1]!.offset = 0;
    expect(buildTimeline([untimed], {}).issues).toEqual([]);
  });

  it('of a later day than any reading are outside', () => {
    const { notesOutside, timeline } = buildTimeline(
      [
        fileOf(rowsOf({ days: 1, value }), [
          { day: 4000, minute: 1, kind: 'meal' },
          { day: -9000, kind: 'meal' },
        ]),
      ],
      { zone: 'Europe/Helsinki' },
    );
    expect(notesOutside).toBe(2);
    expect(timeline!.notes).toEqual([]);
  });

  it('without a time stand at the start of their day, also where its midnight never was', () => {
    // Beirut's clocks went from midnight to one on 31 March 2024.
    const rows = rowsOf({ from: '2024-03-30', days: 2, value: (minute) => (minute < 60 ? null : 100) });
    const file = fileOf(rows, [{ day: 1, kind: 'text', text: 'ill' }], '2024-03-30');
    file.notes[0]!.wall += 8 * HOUR_MS;
    const { notes, days } = built([file], { zone: 'Asia/Beirut', period: { days: 2 } });
    expect(notes).toMatchObject([{ day: 1, at: days[1]!.start, minute: 60 }]);
    file.notes[0]!.wall = Date.UTC(2024, 2, 31);
    expect(buildTimeline([file], { zone: 'Asia/Beirut' }).total).toMatchObject({ notes: 1, setAside: 0 });
  });

  it('in an hour that a traveller’s clock jumped over are kept, beside what came after', () => {
    const rows = rowsOf({ days: 1, value }).map((row) => {
      const offset = row.wall < Date.UTC(2026, 2, 2, 12) ? 60 : 120;
      return { ...row, wall: row.wall + (offset - 60) * MINUTE_MS, offset };
    });
    const { timeline, total } = buildTimeline([fileOf(rows, [{ day: 0, minute: 750, kind: 'meal' }])], {});
    expect(total).toMatchObject({ notes: 1, setAside: 0 });
    expect(timeline!.notes).toMatchObject([{ at: Date.UTC(2026, 2, 2, 11), minute: 780 }]);
  });

  it('belong to the period from its first instant to before its end', () => {
    const rows = rowsOf({ days: 3, value });
    const noted = [1, 2].flatMap((day): NoteOn[] => [
      { day, minute: 0, kind: 'meal' },
      { day: day - 1, minute: 1439, kind: 'meal' },
    ]);
    const { timeline, notesOutside } = buildTimeline([fileOf(rows, noted)], {
      period: { from: '2026-03-03', to: '2026-03-03' },
    });
    expect(timeline!.notes.map(({ day, minute }) => [day, minute])).toEqual([
      [0, 0],
      [0, 1439],
    ]);
    expect(notesOutside).toBe(2);
  });

  it('at one time stand in one order, those without a time first, however they were given', () => {
    const noted: NoteOn[] = [
      { day: 0, kind: 'text', text: 'ill' },
      { day: 0, minute: 0, kind: 'insulin', amount: 4, unit: 'U' },
      { day: 0, minute: 0, kind: 'meal', amount: 20, unit: 'g' },
      { day: 0, minute: 0, kind: 'meal', amount: 30, unit: 'g' },
    ];
    const rows = rowsOf({ days: 1, value });
    const orders = [noted, noted.toReversed(), [noted[2]!, noted[0]!, noted[3]!, noted[1]!]];
    for (const order of orders) {
      const { notes } = built([fileOf(rows, order)]);
      expect(notes.map(({ kind, amount }) => [kind, amount])).toEqual(noted.map(({ kind, amount }) => [kind, amount]));
    }
  });

  it('warn of their offsets only where these were passed over, and count them', () => {
    const noted: NoteOn[] = [
      { day: 0, minute: 480, kind: 'meal' },
      { day: 0, minute: 600, kind: 'meal' },
      { day: 0, minute: 700, kind: 'meal' },
      { day: 0, kind: 'text', text: 'ill' },
    ];
    const withOffsets = (offset?: number) => {
      const rows = rowsOf({ days: 1, value }).map((row) => (offset === undefined ? row : { ...row, offset }));
      const file = fileOf(rows, noted);
      for (const n of [0, 1, 3]) file.notes[n]!.offset = 120;
      return file;
    };
    const warned = (offset?: number, zone?: string) =>
      buildTimeline([withOffsets(offset)], zone === undefined ? {} : { zone }).issues.filter(
        ({ code }) => code === 'note-offsets',
      );
    expect(warned()).toMatchObject([{ count: 2 }]);
    expect(warned(120)).toEqual([]);
    expect(warned(undefined, 'Europe/Helsinki')).toEqual([]);
  });
});

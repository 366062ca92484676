import { array, assert, constantFrom, integer, property, record } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { movementOf, notesOfDay } from '../../src/charts/drawnNotes.ts';
import { lanesHeight, noteLanes } from '../../src/charts/noteLanes.ts';
import { signKeyChart } from '../../src/charts/signKey.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Drawing, Mark } from '../../src/model/drawing.ts';
import type { Instant } from '../../src/model/glucose.ts';
import type { NoteKind } from '../../src/model/input.ts';
import type { Note, Timeline } from '../../src/model/timeline.ts';
import { targetSets } from '../../src/targets/index.ts';
import { CROWD } from '../support/crowd.ts';
import { touching } from '../support/geometry.ts';
import { wordsOf } from '../support/story.ts';

const targets = targetSets.adult;
const speaker = speakerOf(wordsOf(), { unit: 'mg/dL', voice: 'clinic', targets });
const context = { speaker, targets, native: 'mg/dL' as const, text: 7.5 };
const WIDTH = 178;

const note = (kind: NoteKind, minute: number, more: Partial<Note> = {}): Note => ({
  kind,
  wall: 0,
  offset: 0,
  timed: true,
  origin: { file: 'log', line: 1 },
  row: 0,
  at: (minute * 60_000) as Instant,
  day: 0,
  minute,
  ...more,
});

const lanes = (notes: Note[]): Mark[] =>
  noteLanes(
    notes,
    (minute) => 52 + (minute / 1440) * (WIDTH - 2),
    0,
    52 + WIDTH - 2,
    context,
    (label) => label === 'long',
  );
const drawing = (marks: Mark[]): Drawing => ({ width: 52 + WIDTH, height: lanesHeight, summary: '', marks });
const signs = (marks: Mark[], shape: string) => marks.filter((mark) => mark.kind === 'sign' && mark.shape === shape);
const said = (marks: Mark[]): string[] => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

/** What a label tells: one note of so much, or several and their sum. */
function toldOf(label: string): { notes: number; sum: number } {
  const many = /^(\d+)× ([\d.]+)$/.exec(label);
  return many ? { notes: Number(many[1]), sum: Number(many[2]) } : { notes: 1, sum: Number(label) };
}

describe('signs under a day', () => {
  const anyNote = record({
    kind: constantFrom<NoteKind>('meal', 'insulin', 'exercise', 'alarm', 'text', 'medication', 'sensor'),
    minute: integer({ min: 0, max: 1439 }),
    amount: integer({ min: 1, max: 150 }),
  });

  test('never touch, however many there are', () => {
    assert(
      property(array(anyNote, { maxLength: 40 }), (some) => {
        const notes = some.map(({ kind, minute, amount }) => note(kind, minute, { amount, minutes: amount }));
        expect(touching(drawing(lanes(notes)))).toEqual([]);
      }),
    );
  });

  test.each(['meal', 'insulin'] as const)('tell every amount of %s, alone or in a sum', (kind) => {
    const of = record({ minute: integer({ min: 0, max: 1439 }), amount: integer({ min: 1, max: 150 }) });
    assert(
      property(array(of, { minLength: 1, maxLength: 30 }), (some) => {
        const labels = said(lanes(some.map(({ minute, amount }) => note(kind, minute, { amount })))).map(toldOf);
        expect(labels.reduce((sum, { notes }) => sum + notes, 0)).toBe(some.length);
        expect(labels.reduce((sum, one) => sum + one.sum, 0)).toBe(some.reduce((sum, { amount }) => sum + amount, 0));
      }),
    );
  });

  test('a rate is no fingerstick and no dose: one sign a day, with its least and most', () => {
    const rates = Array.from({ length: 96 }, (_, i) =>
      note('insulin-rate', i * 15, { amount: 0.4 + (i % 5) / 10, unit: 'IU/h' }),
    );
    const marks = lanes(rates);
    expect(signs(marks, 'steps')).toHaveLength(1);
    expect(signs(marks, 'plus')).toHaveLength(0);
    expect(said(marks)).toEqual(['0.4–0.8']);
  });

  test('long-acting insulin, rapid insulin and a rate have signs of their own', () => {
    const marks = lanes([
      note('insulin', 480, { amount: 4 }),
      note('insulin', 1320, { amount: 18, label: 'long' }),
      note('insulin-rate', 600, { amount: 0.8 }),
    ]);
    expect(['triangle', 'wedge', 'steps'].map((shape) => signs(marks, shape).length)).toEqual([1, 1, 1]);
  });

  test('of a wrist that notes all movement only what is long enough has a sign, and the key says of how many', () => {
    const steps = Array.from({ length: 48 }, (_, i) => note('exercise', 300 + i * 20, { minutes: 3 }));
    const run = Array.from({ length: 9 }, (_, i) => note('exercise', 1265 + i * 5, { minutes: 5 }));
    const timeline = { notes: [...steps, ...run] } as unknown as Timeline;
    expect(signs(lanes(notesOfDay(timeline, 0)), 'diamond')).toHaveLength(1);
    expect(movementOf(timeline)).toEqual({ shown: 1, left: 48 });
    const key = said(signKeyChart(['exercise'], movementOf(timeline), false, { ...context, text: 8.5 }).marks);
    expect(key[0]!.replaceAll('\u00a0', ' ')).toBe('exercise of 30 min and more (1 of 49 movements a device noted)');
    expect(said(signKeyChart(['exercise'], { shown: 3, left: 0 }, false, { ...context, text: 8.5 }).marks)[0]).toBe(
      'exercise',
    );
  });

  // A real wrist device of the open data: 771 notes of movement in a fortnight.
  test('a real wrist leaves a few signs a day', () => {
    const { timeline } = CROWD.find(({ name }) => name === 't1d_uom 2314')!.make();
    expect(timeline.notes.filter(({ kind }) => kind === 'exercise').length).toBeGreaterThan(500);
    timeline.days.forEach((_, day) => {
      const marks = lanes(notesOfDay(timeline, day));
      expect(signs(marks, 'diamond').length).toBeLessThanOrEqual(6);
      expect(touching(drawing(marks))).toEqual([]);
    });
  });
});

// The check itself: what touches is found.
describe('what touches is seen', () => {
  const text = (x: number, y: number, content = '45'): Mark => ({
    kind: 'text',
    role: 'ink',
    x,
    y,
    text: content,
    size: 8,
    anchor: 'start',
  });
  const sign = (x: number, y: number): Mark => ({ kind: 'sign', shape: 'circle', role: 'ink', x, y, size: 6 });
  const bar: Mark = { kind: 'rect', role: 'low', x: 40, y: 4, w: 20, h: 6 };

  test.each<[string, Mark[], number]>([
    ['a label that ends where a sign begins', [text(10, 10), sign(23, 7)], 1],
    ['a label with air before the next sign', [text(10, 10), sign(26, 7)], 0],
    ['a sign with its own words', [sign(10, 7), text(14.2, 10)], 0],
    ['a label on a label', [text(10, 10), text(18, 12)], 1],
    ['labels of two rows', [text(10, 10), text(10, 20)], 0],
    ['a sign on a sign', [sign(10, 7), sign(15, 7)], 1],
    ['a label against a bar', [text(30, 10), bar], 1],
    ['words within a bar', [text(42, 10, '4'), { ...bar, y: 2, h: 12 }], 0],
    ['a label over the edge', [text(195, 10)], 1],
  ])('%s', (_, marks, found) => {
    expect(touching({ width: 200, height: 30, summary: '', marks })).toHaveLength(found);
  });
});

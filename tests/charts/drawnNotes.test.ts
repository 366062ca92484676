import { expect, it } from 'vitest';
import { drawnNotes } from '../../src/charts/drawnNotes.ts';
import { signKind } from '../../src/charts/noteLanes.ts';
import type { Instant } from '../../src/model/glucose.ts';
import type { NoteKind } from '../../src/model/input.ts';
import type { Note, Timeline } from '../../src/model/timeline.ts';

const note = (kind: NoteKind, day: number, minute: number, more: Partial<Note> = {}): Note => ({
  kind,
  wall: 0,
  offset: 0,
  timed: true,
  origin: { file: 'log', line: 1 },
  row: 0,
  at: ((day * 1440 + minute) * 60_000) as Instant,
  day,
  minute,
  ...more,
});
const drawn = (notes: Note[]) =>
  drawnNotes({ notes } as unknown as Timeline).map(
    ({ kind, minute, minutes }) => `${kind} ${minute}${minutes === undefined ? '' : ` for ${minutes}`}`,
  );

it('draws exercise that a person noted as it was noted', () => {
  expect(drawn([note('exercise', 0, 480, { minutes: 20 }), note('meal', 0, 500), note('exercise', 0, 1000)])).toEqual([
    'exercise 480 for 20',
    'meal 500',
    'exercise 1000',
  ]);
});

it('draws of a wrist device that records every movement only the long bouts, one sign each', () => {
  const steps = Array.from({ length: 48 }, (_, i) => note('exercise', 0, 300 + i * 20, { minutes: 3 }));
  const run = Array.from({ length: 9 }, (_, i) => note('exercise', 0, 1265 + i * 5, { minutes: 5 }));
  expect(drawn([...steps, note('meal', 0, 500), ...run])).toEqual(['meal 500', 'exercise 1265 for 45']);
});

it('draws the changes of a rate that a person makes, not those that a program makes all day', () => {
  const few = [0, 360, 1200].map((minute) => note('insulin-rate', 0, minute, { amount: 1 }));
  const many = Array.from({ length: 96 }, (_, i) => note('insulin-rate', 1, i * 15, { amount: i }));
  expect(drawn([...few, ...many, note('insulin', 1, 700)])).toEqual([
    'insulin-rate 0',
    'insulin-rate 360',
    'insulin-rate 1200',
    'insulin 700',
  ]);
});

it('draws a pump’s rate as a rate, and never as a finger stick at 0.8 mg/dL', () => {
  const long = (label: string) => label === 'basal';
  const kinds = (['insulin-rate', 'insulin', 'fingerstick', 'calibration'] as const).map((kind) =>
    signKind(note(kind, 0, 0, { amount: 0.8, unit: kind === 'insulin-rate' ? 'IU/h' : '' }), long),
  );
  expect(kinds).toEqual(['rate', 'rapid', 'stick', 'stick']);
});

import type { InsulinNoted } from '../model/readingOrders.ts';
import type { Note } from '../model/timeline.ts';
import { median } from '../stats/quantile.ts';
import type { Measure } from './measure.ts';

/**
 * Units noted a day, all insulins together and long-acting ones apart, as they stand in the log: never what should be
 * taken, nor all that was. A note of 0 units is a note; a pump's rates are no doses.
 */
export const insulinNoted: Measure<'insulinNoted'> = {
  id: 'insulinNoted',
  source: 'Daybands',
  needs: {},
  definition: {},
  compute(shared) {
    const { timeline } = shared;
    const notes = timeline.notes.filter(({ kind }) => kind === 'insulin');
    const given = notes.flatMap((note): Given[] =>
      note.amount !== undefined && note.unit === 'IU' ? [{ note, day: note.day, amount: note.amount }] : [],
    );
    if (given.length === 0) return { ok: false, why: 'none-noted' };
    const long = new Set(shared.occasions().insulin.flatMap(({ note, is }) => (is === 'long-acting' ? [note] : [])));
    const perDay = byDay(given).map(([day, some]) => ({
      date: timeline.days[day]!.date,
      units: sum(some),
      notes: some.length,
    }));
    const value: InsulinNoted = {
      days: timeline.days.length,
      noted: perDay.length,
      perDay,
      median: median(perDay.map(({ units }) => units)),
      longActing: partOf(given.filter(({ note }) => long.has(note))),
      others: partOf(given.filter(({ note }) => !long.has(note))),
      rates: timeline.notes.some(({ kind }) => kind === 'insulin-rate'),
      withoutAmount: notes.length - given.length,
    };
    return { ok: true, value, n: given.length, of: 'notes' };
  },
};

interface Given {
  note: Note;
  day: number;
  amount: number;
}

const sum = (some: readonly Given[]): number => some.reduce((total, { amount }) => total + amount, 0);

function byDay(given: readonly Given[]): [day: number, Given[]][] {
  const days = new Map<number, Given[]>();
  for (const one of given) days.set(one.day, [...(days.get(one.day) ?? []), one]);
  return [...days].sort(([a], [b]) => a - b);
}

function partOf(given: readonly Given[]): InsulinNoted['others'] {
  if (given.length === 0) return null;
  const units = byDay(given).map(([, some]) => sum(some));
  return { noted: units.length, median: median(units) };
}

import type { InsulinNoted } from '../model/readingOrders.ts';
import { median } from '../stats/quantile.ts';
import type { Measure } from './measure.ts';

/** Units noted a day, all insulins together, as they stand in the log: never what should be taken, nor all that was. */
export const insulinNoted: Measure<'insulinNoted'> = {
  id: 'insulinNoted',
  source: 'Daybands',
  needs: {},
  definition: {},
  compute({ timeline }) {
    const notes = timeline.notes.filter(({ kind }) => kind === 'insulin');
    const given = notes.flatMap(({ day, amount, unit }) =>
      amount !== undefined && unit === 'IU' ? [{ day, amount }] : [],
    );
    if (given.length === 0) return { ok: false, why: 'none-noted' };
    const perDay = timeline.days.flatMap(({ date }, day) => {
      const ofDay = given.filter((note) => note.day === day);
      if (ofDay.length === 0) return [];
      return [{ date, units: ofDay.reduce((sum, { amount }) => sum + amount, 0), notes: ofDay.length }];
    });
    const value: InsulinNoted = {
      days: timeline.days.length,
      noted: perDay.length,
      perDay,
      median: median(perDay.map(({ units }) => units)),
      withoutAmount: notes.length - given.length,
    };
    return { ok: true, value, n: given.length, of: 'notes' };
  },
};

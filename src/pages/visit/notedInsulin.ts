import type { LocalDate } from '../../model/glucose.ts';
import type { Note } from '../../model/timeline.ts';
import { type InsulinKind, insulinKind } from '../../occasions/insulin.ts';
import { logReader, NO_LOG_WORDS } from '../../occasions/words.ts';
import { count, type PageContext, word } from '../context.ts';

/** Insulin notes of a day by what they stand for: doses, long-acting insulin and a pump's rates are no substitute for one another. */
export function insulinOn({ analysis }: PageContext): (date: LocalDate) => { note: Note; is: InsulinKind }[] {
  const { notes, days } = analysis.timeline;
  const read = logReader(analysis.settings.logWords ?? NO_LOG_WORDS);
  const all = notes.flatMap((note) => {
    const is = insulinKind(note, read);
    return is === null ? [] : [{ note, is }];
  });
  return (date) => all.filter(({ note }) => days[note.day]!.date === date);
}

/** On how many of these days, and of all, insulin is noted; doses apart from what runs all day, where both are noted. */
export function insulinDays(context: PageContext, dates: readonly LocalDate[]) {
  const on = insulinOn(context);
  const { days } = context.analysis.timeline;
  const has = (date: LocalDate, basal: boolean): boolean => on(date).some(({ is }) => (is !== 'dose') === basal);
  const kinds = new Set(days.flatMap(({ date }) => on(date).map(({ is }) => is)));
  const basal = kinds.has('long-acting')
    ? kinds.has('rate')
      ? 'both'
      : 'long-acting'
    : kinds.has('rate')
      ? 'rates'
      : 'none';
  const primary = !kinds.has('dose') && basal !== 'none';
  const withIt = (which: boolean): number => days.filter(({ date }) => has(date, which)).length;
  return {
    noted: count(dates.filter((date) => has(date, primary)).length),
    all: count(withIt(primary)),
    of: count(days.length),
    kinds: word(kinds.has('dose') ? (basal === 'none' ? 'doses' : 'apart') : basal === 'none' ? 'none' : 'basal'),
    basal: word(basal),
    gaps: word(withIt(primary) === days.length ? 'no' : 'told'),
  };
}

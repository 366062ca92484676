import type { LocalDate } from '../../model/glucose.ts';
import { basalOf, type InsulinNote, insulinNotes, kindsOf } from '../../occasions/insulin.ts';
import { logReader, NO_LOG_WORDS } from '../../occasions/words.ts';
import { count, type PageContext, word } from '../context.ts';

/** All notes of insulin with their days: doses, long-acting insulin and a pump's rates are no substitute for one another. */
export function notedInsulin({ analysis }: PageContext): (InsulinNote & { date: LocalDate })[] {
  const { notes, days } = analysis.timeline;
  const read = logReader(analysis.settings.logWords ?? NO_LOG_WORDS);
  return insulinNotes(notes, read).map((one) => ({ ...one, date: days[one.note.day]!.date }));
}

/** On how many of these days, and of all, insulin is noted; doses apart from what runs all day, where both are noted. */
export function insulinDays(context: PageContext, dates: readonly LocalDate[]) {
  const notes = notedInsulin(context);
  const doses = notes.some(({ is }) => is === 'dose');
  const basal = basalOf(notes);
  const noted = new Set(notes.flatMap(({ is, date }) => ((is === 'dose') === doses ? [date] : [])));
  const of = context.analysis.timeline.days.length;
  return {
    noted: count(dates.filter((date) => noted.has(date)).length),
    all: count(noted.size),
    of: count(of),
    kinds: word(kindsOf(doses, basal)),
    basal: word(basal),
    gaps: word(noted.size === of ? 'no' : 'told'),
  };
}

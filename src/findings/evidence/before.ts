import type { Measures } from '../../model/measures.ts';
import type { NoteBefore, Outcome, OutcomeNotes } from '../../model/notedBefore.ts';
import { NIGHT_END } from '../../targets/consensus.ts';
import { absent, holds, untold } from '../finding.ts';
import { choice, clock, count, limit, word } from './quantities.ts';

/** Notes that last all day: nothing follows them by hours. */
const ALL_DAY: readonly NoteBefore['id'][] = ['weekend', 'first-sensor-day'];

/** The note that stands out before the first of these outcomes of which one does. */
export function before({ notedBefore }: Measures, outcomes: readonly Outcome[]) {
  if (!notedBefore.ok) return untold(notedBefore.why);
  const came = outcomes.flatMap((of) => notedBefore.value.find((one) => one.of === of && one.dates.length > 0) ?? []);
  if (came.length === 0) return absent;
  for (const one of came) {
    const [note] = one.notes;
    if (note?.verdict === 'hint') return hintOf(one, note);
  }
  const looked = came.some(({ notes }) => notes.some(({ verdict }) => verdict === 'not-told-apart'));
  return looked ? absent : untold('too-few-occasions');
}

function hintOf({ of, dates }: OutcomeNotes, note: NoteBefore) {
  const { id, name, hours, followed, withIt, without } = note;
  const more = withIt.k * without.n > without.k * withIt.n;
  const after = more && followed.n > 0 && !ALL_DAY.includes(id);
  return holds(
    {
      of: choice(of),
      order: word(after ? 'after' : 'day'),
      note: choice(id),
      name: word(name),
      hours: count(hours),
      k: count(followed.k),
      events: count(followed.n),
      withK: count(withIt.k),
      withN: count(withIt.n),
      withoutK: count(without.k),
      withoutN: count(without.n),
      six: clock(NIGHT_END),
      limit: limit(of.includes('high') ? 'high' : 'low'),
      outer: limit(of === 'very-highs' ? 'very-high' : 'very-low'),
    },
    dates.map((date) => ({ date })),
    more ? 'more' : 'less',
  );
}

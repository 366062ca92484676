import type { LocalDate } from '../model/glucose.ts';
import type { Visit } from '../model/visits.ts';

const lastDay = ({ sums }: Visit): LocalDate => sums.days.at(-1)!.date;

/** Files of visits as they follow one another, each period once, and those that are not earlier than this one. */
export interface Ordered {
  earlier: Visit[];
  notEarlier: Visit[];
}

/**
 * By the last day of each. Of two files of the same days the later made one counts, as what was agreed may have been added
 * to it.
 */
export function inOrder(visits: readonly Visit[], to: LocalDate): Ordered {
  const known = new Map<string, Visit>();
  for (const visit of visits) {
    const period = `${visit.sums.days[0]!.date} ${lastDay(visit)}`;
    const other = known.get(period);
    if (!other || isLater(visit, other)) known.set(period, visit);
  }
  const sorted = [...known.values()].sort((a, b) => (lastDay(a) < lastDay(b) ? -1 : 1));
  return {
    earlier: sorted.filter((visit) => lastDay(visit) < to),
    notEarlier: sorted.filter((visit) => lastDay(visit) >= to),
  };
}

/** Made on the same day, the one that holds more of what was agreed. */
const isLater = (a: Visit, b: Visit): boolean =>
  a.origin.on > b.origin.on || (a.origin.on === b.origin.on && a.agreed !== null && b.agreed === null);

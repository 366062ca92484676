import type { LocalDate } from '../model/glucose.ts';
import type { DaySums, PeriodSums } from '../model/thenAndNow.ts';
import type { Visit } from '../model/visits.ts';
import { LONGEST, plainLine } from '../schemas/plainLine.ts';

/** Means of one day that lie further apart are of other readings: numbers in mmol/L are rounded to 0.9 mg/dL at most (ours). */
const ROUNDING = 1;
/** Of a sensor read at other intervals the means of one day lie this far apart at most (ours). */
const OTHER_INTERVAL = 4;
/** Days whose readings lie further apart in minutes were not seen alike, and say nothing of whose they are (ours). */
const SAME_MINUTES = 15;

/** Why a visit file cannot be this person's; null where nothing contradicts it. */
export type Stranger = { by: 'code'; theirs: string; ours: string } | { by: 'days'; dates: LocalDate[] };

/**
 * A code other than the one given, or days of the file whose sums these readings do not give. `now` are the same days as
 * the readings give them. A day that one of the two saw less of is not compared: an export ends in the middle of a day, and
 * holes are filled later.
 */
export function strangerIn(visit: Visit, code: string | undefined, now: PeriodSums | null): Stranger | null {
  const theirs = visit.person.code;
  if (theirs !== undefined && code !== undefined && !isSameCode(theirs, code))
    return { by: 'code', theirs, ours: code };
  const within = now?.interval === visit.sums.interval ? ROUNDING : OTHER_INTERVAL;
  const dates = comparable(visit, now).flatMap(([then, day]) => (alike(then, day, within) ? [] : [then.date]));
  return dates.length > 0 ? { by: 'days', dates } : null;
}

/** As the file holds it: without signs that nobody sees. */
const isSameCode = (a: string, b: string): boolean => plainLine(a, LONGEST.line) === plainLine(b, LONGEST.line);

/** Whether days in both show that the file is this person's. */
export const provedBy = (visit: Visit, now: PeriodSums | null): boolean => comparable(visit, now).length > 0;

function comparable({ sums }: Visit, now: PeriodSums | null): [DaySums, DaySums][] {
  const byDate = new Map(now?.days.map((day) => [day.date, day]));
  return sums.days.flatMap((then): [DaySums, DaySums][] => {
    const day = byDate.get(then.date);
    const both = day && then.known > 0 && day.known > 0 && Math.abs(then.known - day.known) <= SAME_MINUTES;
    return both ? [[then, day]] : [];
  });
}

/** The mean and the mean of squares tell two people's days apart; the second as a root, in mg/dL. */
function alike(a: DaySums, b: DaySums, within: number): boolean {
  const differenceIn = (of: (day: DaySums) => number) => Math.abs(of(a) - of(b));
  const mean = differenceIn(({ sum, known }) => sum / known);
  const root = differenceIn(({ squares, known }) => Math.sqrt(squares / known));
  return mean <= within && root <= within;
}

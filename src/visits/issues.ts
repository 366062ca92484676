import type { Issue } from '../model/input.ts';
import type { Visit } from '../model/visits.ts';
import type { Stranger } from './rightPerson.ts';

const whole = ({ file }: Visit) => ({ file, line: 0 });

/** Why a visit file is refused, and the report with it: whoever gave it has to look. */
export function strangerIssue(visit: Visit, stranger: Stranger): Issue {
  const origin = whole(visit);
  return stranger.by === 'code'
    ? { code: 'visit-other-code', level: 'refusal', origin, actual: stranger.theirs, expected: stranger.ours }
    : { code: 'visit-other-days', level: 'refusal', origin, actual: stranger.dates };
}

/** A visit that does not lie before this one is left out. */
export const notEarlierIssue = (visit: Visit): Issue => ({
  code: 'visit-not-earlier',
  level: 'note',
  origin: whole(visit),
  actual: visit.sums.days.at(-1)!.date,
});

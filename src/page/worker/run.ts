import { visitDay } from '../../papers/resultNames.ts';
import type { Found, Someone } from '../messages.ts';
import { baseOf, type Lain, type Shelf } from './files.ts';

/** Visit files by their last day, the oldest first. */
export const byDay = (a: string, b: string): number => (visitDay(baseOf(a))! < visitDay(baseOf(b))! ? -1 : 1);

/** What the settings of the folder say of the run, what they name that nobody brought, and what there is to compare with. */
export function runOf(
  everyone: Lain,
  { paths }: Shelf,
  people: readonly Someone[],
  said: (files: number, people: number) => string,
): Pick<Found, 'earlier' | 'run' | 'lacking'> {
  const run = 'issues' in everyone ? {} : everyone.run;
  const files = new Set(people.flatMap(({ earlier }) => earlier)).size;
  const { since, thresholds } = run;
  return {
    run,
    earlier: files === 0 ? '' : said(files, people.filter(({ earlier }) => earlier.length > 0).length),
    lacking: [
      ...(thresholds === undefined || paths.has(thresholds) ? [] : [thresholds]),
      ...(since === undefined || files > 0 ? [] : [since]),
    ],
  };
}

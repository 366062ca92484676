import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { CompareChoice, Marked } from '../model/settings.ts';
import type { Visit } from '../model/visits.ts';
import { visitDay } from '../papers/resultNames.ts';
import { comparedDays, markedIn, a1cOf as readA1c } from '../papers/wanted.ts';
import { isLocalDate } from '../time/calendar.ts';
import { WrongUse } from './exits.ts';
import { readText, standsAt } from './plainFile.ts';

/** What `--compare` and `--changed` ask for: `previous`, `FROM..TO`, visit files or folders of them, or a day on which something changed. */
export async function compareWith(
  compare?: string | readonly string[],
  changed?: string,
): Promise<CompareChoice | undefined> {
  const marked = changed === undefined ? undefined : markedOn(changed);
  if (compare === undefined) return marked && { with: 'change', ...marked };
  const asked = typeof compare === 'string' ? [compare] : compare;
  const [only] = asked;
  if (asked.length !== 1 || only === undefined) return besideVisits(await visitsAt(asked), marked);
  const days = comparedDays(only);
  if (days && marked) throw new WrongUse('compareOrChanged');
  if (days?.with === 'dates' && days.from > days.to)
    throw new WrongUse('datesReversed', { from: days.from, to: days.to });
  return days ?? besideVisits(await visitsAt(asked), marked);
}

const besideVisits = (visits: Visit[], changed: Marked | undefined): CompareChoice => ({
  with: 'visits',
  visits,
  ...(changed === undefined ? {} : { changed }),
});

function markedOn(value: string): Marked {
  const { date, text } = markedIn(value);
  if (!isLocalDate(date)) throw new WrongUse('wrongDate', { option: '--changed', value: date });
  // `--changed 2026-03-14 sensor.csv` leaves the text out and would lose a file without a word.
  if (text === '' || standsAt(text)) throw new WrongUse('changedText', { value });
  return { date, text };
}

/** Every visit file that is named, or lies in a folder that is. */
async function visitsAt(paths: readonly string[]): Promise<Visit[]> {
  const { readVisit } = await import('../schemas/readVisit.ts');
  return paths.flatMap(visitFiles).map((path) => {
    const read = readVisit(readText(path), basename(path));
    if ('newer' in read) throw new WrongUse('newerVisit', { path, form: read.newer, known: read.known });
    if ('problem' in read) throw new WrongUse('wrongVisit', { path, problem: read.problem });
    return read.visit;
  });
}

function visitFiles(path: string): string[] {
  const stat = standsAt(path);
  if (stat?.isFile()) return [path];
  const names = stat?.isDirectory() ? readdirSync(path).filter((name) => visitDay(name) !== undefined) : [];
  if (names.length === 0) throw new WrongUse('wrongCompare', { value: path });
  return names.sort().map((name) => join(path, name));
}

/** The date and the text of `--changed` are one value for the parser of the command line, which knows one a name. */
export function joinChanged(args: readonly string[]): string[] {
  const at = args.indexOf('--changed');
  const [date, text] = [args[at + 1], args[at + 2]];
  if (at < 0 || date === undefined || text === undefined || /\s/.test(date) || text.startsWith('-')) return [...args];
  return [...args.slice(0, at + 1), `${date} ${text}`, ...args.slice(at + 3)];
}

/** A laboratory A1C as it was typed in. */
export function a1cOf(value: string): { value: number; unit: '%' | 'mmol/mol' } {
  const a1c = readA1c(value);
  if (!a1c) throw new WrongUse('wrongA1c', { value });
  return a1c;
}

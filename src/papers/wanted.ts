import type { Place } from '../language/index.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { CompareChoice, PeriodChoice, Settings } from '../model/settings.ts';
import type { Agreed } from '../model/visits.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import { isLocalDate } from '../time/calendar.ts';

/** What the person asked for, in the shape that the analysis and the papers take. */
export interface Wanted {
  settings: Settings;
  /** Where the papers are read: their language and forms. */
  place: Place;
  paper: 'a4' | 'letter';
  grey: boolean;
  large: boolean;
  /** Whether to write what the next visit can compare with. */
  snapshot: boolean;
  /** The clinic's own system of identifiers in FHIR. */
  fhirSystem?: string;
  /** What was agreed at the visit; null where nobody has typed it in. */
  agreed: Agreed | null;
}

/** What a door brings along: what it opened, what day it is, and what it worked out of a text. */
export type Brought = Pick<
  Settings,
  'today' | 'logWords' | 'medicines' | 'topicOrder' | 'compare' | 'a1c' | 'pregnancyGoals' | 'layout'
> & {
  agreed?: Agreed | undefined;
};

/**
 * Names that were asked for, whoever asked, as settings of an analysis and wishes for papers. Already checked: the door says
 * what is wrong with a name. Names that are absent stay absent, so that the same wishes give the same JSON.
 */
export function wantedOf(asked: FolderSettings, place: Place, brought: Brought): Wanted {
  const { today, logWords, medicines, topicOrder, compare, a1c, pregnancyGoals, layout } = brought;
  return {
    settings: {
      targets: asked.targets ?? 'adult',
      today: asked.date ?? today,
      person: pick(asked, ['name', 'code', 'clinic', 'phone']),
      ...pick({ logWords, medicines, topicOrder }, ['logWords', 'medicines', 'topicOrder']),
      ...pick(asked, ['topic']),
      ...periodOf(asked),
      ...pick(asked, ['unit', 'zone', 'dateOrder']),
      ...(asked.inferMeals ? { inferMeals: true } : {}),
      ...pick({ compare, a1c }, ['compare', 'a1c']),
      // Every way in was checked to be a day of the calendar.
      ...(asked.dueDate === undefined ? {} : { dueDate: asked.dueDate as LocalDate }),
      ...pick({ pregnancyGoals }, ['pregnancyGoals']),
      ...(asked.moreIndices ? { moreIndices: true } : {}),
      ...(asked.acceptLosses ? { acceptLosses: asked.acceptLosses } : {}),
      ...(layout === undefined ? {} : { layout }),
    },
    place,
    paper: asked.paper ?? place.paper,
    grey: asked.grey ?? false,
    large: asked.large ?? false,
    // What was agreed is typed in for the next visit.
    snapshot: asked.snapshot ?? brought.agreed !== undefined,
    agreed: brought.agreed ?? null,
    ...pick(asked, ['fhirSystem']),
  };
}

/** Of settings that lie beside the files and what was asked for elsewhere, the latter wins: what then holds, and which names of the file do. */
export function settled(
  file: FolderSettings,
  options: FolderSettings,
): { asked: FolderSettings; fromFile: string[]; overruled: string[] } {
  const below = { ...file };
  const given = Object.keys(options).filter((name) => options[name as keyof FolderSettings] !== undefined);
  // Days and dates answer the same question, so one that is asked for sets the other in the file aside.
  const period = ['days', 'from', 'to'];
  if (given.some((name) => period.includes(name))) for (const name of period) delete below[name as 'days'];
  if (given.includes('compare') || given.includes('changed')) {
    // A change that is marked leaves earlier visits where they are.
    if (given.includes('compare') || [below.compare ?? []].flat().some(comparedDays)) delete below.compare;
    delete below.changed;
  }
  // A code that is asked for stands instead of a name, unless the name is asked for too.
  if (given.includes('code') && !given.includes('name')) delete below.name;
  const fromFile = Object.keys(below).filter((name) => !given.includes(name));
  const overruled = Object.keys(below).filter((name) => given.includes(name));
  const asked = { ...below };
  for (const name of given) Object.assign(asked, { [name]: options[name as keyof FolderSettings] });
  return { asked, fromFile, overruled };
}

/** A laboratory A1C in percent (2 digits before the mark at most) or in mmol/mol, told apart by size, which never overlap; null for what is none. */
export function a1cOf(value: string): NonNullable<Settings['a1c']> | null {
  const read = /^(\d{1,3}(?:[.,]\d{1,2})?)\s*(%|mmol\/mol)?$/.exec(value.trim());
  const number = Number(read?.[1]?.replace(',', '.') ?? Number.NaN);
  const percent = number >= 3 && number <= 20;
  const mmol = number > 20 && number <= 195;
  const unit = percent ? '%' : 'mmol/mol';
  if (!read || !(percent || mmol) || (read[2] !== undefined && read[2] !== unit)) return null;
  return { value: number, unit };
}

/** The date and the text of a change that somebody marks, as it was typed in. */
export function markedIn(value: string): { date: string; text: string } {
  const [date = '', ...rest] = value.trim().split(/\s+/);
  return { date, text: rest.join(' ').slice(0, 80) };
}

/** What `previous` or `FROM..TO` ask to compare with; null where a file may be meant. */
export function comparedDays(compare: string): CompareChoice | null {
  if (compare === 'previous') return { with: 'previous' };
  const dates = compare.split('..');
  if (dates.length !== 2 || !dates.every(isLocalDate)) return null;
  const [from, to] = dates as [LocalDate, LocalDate];
  return { with: 'dates', from, to };
}

/** Only the names that are there: under exact optional types absent and undefined differ. */
function pick<T extends object, K extends keyof T>(from: T, names: K[]): { [P in K]?: NonNullable<T[P]> } {
  return Object.fromEntries(names.filter((name) => from[name] != null).map((name) => [name, from[name]])) as {
    [P in K]?: NonNullable<T[P]>;
  };
}

function periodOf({ days, from, to }: FolderSettings): { period?: PeriodChoice } {
  if (days !== undefined) return { period: { days } };
  if (from === undefined && to === undefined) return {};
  return { period: { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) } };
}

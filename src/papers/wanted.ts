import type { Place } from '../language/index.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { PeriodChoice, Settings } from '../model/settings.ts';
import type { Agreed } from '../model/visits.ts';
import type { FolderSettings } from '../schemas/settings.ts';

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
  };
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

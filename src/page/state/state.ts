import type { Agreed } from '../../model/visits.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import type { Ended, Extras, Listed, Listing } from '../folderMessages.ts';
import type { DaySeen, Found, LayoutAnswers, Read, Sheet, Someone, Ticked } from '../messages.ts';
import type { Picked } from './dropped.ts';
import type { TypedField } from './typed.ts';

/** Whose page it is: the person's own days, or a visit with someone else's. Decides which paper comes first. */
export type Way = 'own' | 'visit';

/** What the page is about at the moment. */
export type Step = 'bring' | 'reading' | 'who' | 'folder' | 'asking' | 'papers' | 'failed';

/** The run over a folder of people. */
export interface Run {
  /** What it is at; `no`: it rests. */
  at: 'reading' | 'saving' | 'no';
  /** Somebody stopped it before everyone was reached. */
  stopped: boolean;
  /** By what people's results are called. */
  ended: Map<string, Ended>;
  listed: Listed | null;
  order: Listing['order'];
  /** How many the day has room for. */
  places: number | null;
  /** Everyone, to be opened; the worklist as its web page; or as it is printed. */
  tab: 'list' | 'screen' | 'paper';
  thresholds: { name: string; text: string } | null;
  extras: Extras[];
  /** Codes of those whose papers hold letters that no face has, and these letters. */
  lacking: Map<string, string[]>;
  /** What came of saving, in words. */
  saved: string;
}

/** All that the page knows, in memory and nowhere else. Files stay as the browser gave them, so that a new worker can read them. */
export interface State {
  step: Step;
  way: Way;
  /** Language, and region where one was chosen: `es-MX`. */
  place: string;
  picked: Picked[];
  found: Found | null;
  person: Someone | null;
  /** The person is one of many, whose code the folder gives. */
  ofMany: boolean;
  /** People of a folder are compared with the visit files that were brought for them. */
  since: boolean;
  /** Days nobody lived: the example. */
  invented: boolean;
  /** What was chosen or answered, as a settings file and a layout file name it; a name without a value sets aside what lies there. */
  asked: FolderSettings;
  layout: Record<string, unknown>;
  read: Read | null;
  /** All days of the files; none until they are known. */
  days: DaySeen[];
  sheet: Sheet;
  run: Run | null;
  /** What was chosen or answered for others of a folder, by what their results are called by. */
  answers: Map<string, Pick<State, 'asked' | 'layout'>>;
  /** Words of the visit; of everyone who was opened, by whose they are; and those of them that a saved file holds. */
  typed: Agreed;
  kept: Map<string, Agreed>;
  saved: Map<string, Agreed>;
  /** What can be taken back, the last step last; the field that is being typed in. */
  undo: { typed: Agreed; topic: string | undefined }[];
  typing: TypedField | '';
  /** The draft as it stood when somebody began to edit it. */
  draftThen: string;
  /** Sheets that are printed and saved together. */
  sheets: Ticked[];
  /** What went wrong, in words. */
  fault: string;
}

export const beginning = (place: string): State => ({
  ...{ step: 'bring', way: 'own', place, picked: [], found: null, person: null, ofMany: false, invented: false },
  since: true,
  ...{ asked: {}, layout: {}, read: null, days: [], sheet: 'patient', run: null, answers: new Map(), fault: '' },
  ...{ typed: {}, kept: new Map(), undo: [], saved: new Map(), typing: '', draftThen: '' },
  sheets: ['clinic', 'remarks', 'patient'],
});

/** An answer, as settings and lines of a layout that it sets. */
export interface Answered {
  asked?: FolderSettings;
  layout?: LayoutAnswers;
}

/** What was answered before, and over it what is answered now; a column answered twice has the later meaning. */
export function answered(state: State, { asked = {}, layout = {} }: Answered): void {
  const { acceptLosses = [], ...rest } = asked;
  Object.assign(state.asked, rest);
  if (acceptLosses.length > 0)
    state.asked.acceptLosses = [...new Set([...(state.asked.acceptLosses ?? []), ...acceptLosses])];
  for (const [name, value] of Object.entries(layout)) {
    const below = state.layout[name];
    state.layout[name] = isRecord(below) && isRecord(value) ? { ...below, ...value } : value;
  }
}

/** Has settings say nothing of some names, whatever lies with the files. */
export function setAside({ asked, read }: Pick<State, 'asked' | 'read'>, ...names: (keyof FolderSettings)[]): void {
  for (const name of names) if (name in asked || read?.holds[name] !== undefined) asked[name] = undefined;
}

/** Whether anything was chosen or answered that could be taken back. */
export const hasAnswers = ({ asked, layout }: State): boolean =>
  Object.keys(asked).length + Object.keys(layout).length > 0;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The language and the region of a place. */
export const placed = (place: string): { language: 'en' | 'es'; region?: string } => ({
  language: place.startsWith('es') ? 'es' : 'en',
  ...(place.includes('-') ? { region: place } : {}),
});

/** What holds when somebody is opened: what was answered for one of many is found again. */
export function beginPerson(state: State, person: Someone, ofMany: boolean, sheet: Sheet): void {
  const { asked, layout } = (ofMany ? state.answers.get(person.stem) : undefined) ?? { asked: {}, layout: {} };
  const sheets: Ticked[] = state.way === 'own' ? ['patient'] : ['clinic', 'remarks', 'patient'];
  Object.assign(state, { person, ofMany, asked: { ...asked }, layout: { ...layout }, sheet, sheets, days: [] });
}

/** What was answered as a text, with the names that have no value. */
const written = (answers: unknown): string =>
  JSON.stringify(answers, (_, value: unknown) => (value === undefined ? null : value));

/** Keeps what was answered for one of many; the person, where that differs from before. */
export function keepAnswers(state: State): Someone | null {
  const { person, asked, layout } = state;
  const changed = person && written(state.answers.get(person.stem)) !== written({ asked, layout });
  if (!changed || !hasAnswers(state)) return null;
  state.answers.set(person.stem, { asked, layout });
  return person;
}

import manifest from '../../package.json' with { type: 'json' };
import foods from '../../templates/foods.json' with { type: 'json' };
import medicines from '../../templates/medicines.json' with { type: 'json' };
import { LANGUAGES, type Place, type Words, wordsFor } from '../language/index.ts';
import type { Settings } from '../model/settings.ts';
import { checkLogWords } from '../schemas/logWords.ts';
import { checkMedicines } from '../schemas/medicines.ts';

// What the program brings along, for whoever has no disk to read it from. The command reads the files themselves, which
// a clinic may have edited.

export const { version } = manifest;

/** What a clinic has changed of it, in a copy of the page that it hands out. */
export interface Changed extends Pick<Settings, 'logWords' | 'medicines' | 'topicOrder'> {
  /** Files of words, by name. */
  words?: Readonly<Record<string, unknown>>;
}

let changed: Changed = {};

/** The door says so before anything is asked for. */
export const bringChanged = (own: Changed): void => {
  changed = own;
};

/** Words of logbooks and names of medicines. */
function ownLists(): Omit<Changed, 'words'> {
  const { words: _, ...lists } = changed;
  const checked = checkLogWords(foods);
  const list = checkMedicines(medicines);
  return { ...('words' in checked ? { logWords: checked.words } : {}), ...(list ? { medicines: list } : {}), ...lists };
}

/** In the order in which the command settles them, so that the numbers are written alike, whoever asked for them. */
const IN_ORDER: Record<keyof Settings, true> = {
  targets: true,
  today: true,
  person: true,
  logWords: true,
  medicines: true,
  topicOrder: true,
  topic: true,
  period: true,
  unit: true,
  zone: true,
  dateOrder: true,
  inferMeals: true,
  compare: true,
  a1c: true,
  dueDate: true,
  pregnancyGoals: true,
  moreIndices: true,
  acceptLosses: true,
  layout: true,
};

/** Settings with what the program brings along, where they bring nothing of their own. */
export function completed(settings: Settings): Settings {
  const all = { ...ownLists(), ...settings };
  const names = Object.keys(IN_ORDER) as (keyof Settings)[];
  return Object.fromEntries(
    names.filter((name) => all[name] !== undefined).map((name) => [name, all[name]]),
  ) as unknown as Settings;
}

const JSON_OF: Record<string, () => Promise<unknown>> = {
  en: () => import('../../templates/words/en.json', { with: { type: 'json' } }),
  es: () => import('../../templates/words/es.json', { with: { type: 'json' } }),
  'en-GB': () => import('../../templates/words/en-GB.json', { with: { type: 'json' } }),
  'es-ES': () => import('../../templates/words/es-ES.json', { with: { type: 'json' } }),
  locked: () => import('../../templates/words/locked.json', { with: { type: 'json' } }),
};

const content = async (name: string): Promise<unknown> => ((await JSON_OF[name]!()) as { default: unknown }).default;

/** The words of the papers for a place, loaded when they are asked for. */
export async function ownWords(place: Place): Promise<Words> {
  const { language, over } = place;
  if (!LANGUAGES.includes(language)) throw new RangeError(`no words for ${language}`);
  const text = async (name: string): Promise<unknown> => changed.words?.[name] ?? (await content(name));
  const [base, locked] = await Promise.all([text(language), text('locked')]);
  return wordsFor(place, over === undefined ? { base, locked } : { base, locked, over: await text(over) });
}

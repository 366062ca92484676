import type { Place, Words } from '../../language/index.ts';
import type { Baked } from '../../model/baked.ts';
import type { Settings } from '../../model/settings.ts';
import { ownWords } from '../../papers/own.ts';
import { checkLogWords } from '../../schemas/logWords.ts';
import { checkMedicines } from '../../schemas/medicines.ts';
import { type FolderSettings, readSettings } from '../../schemas/settings.ts';
import { parseThresholds, type SomeThresholds } from '../../schemas/thresholds.ts';
import { checkTopicOrder } from '../../topics/index.ts';

/** What a clinic put into its copy of the page, checked as the command checks it. */
export interface ClinicOwn {
  settings: FolderSettings;
  lists: Pick<Settings, 'logWords' | 'medicines' | 'topicOrder'>;
  thresholds?: SomeThresholds;
  words: Readonly<Record<string, unknown>>;
}

export const NOTHING: ClinicOwn = { settings: {}, lists: {}, words: {} };

/** @throws Error that names the part which does not hold: the copy was changed by hand. */
export function readClinicOwn(text: string): ClinicOwn {
  if (text === '') return NOTHING;
  const baked = JSON.parse(text) as Baked;
  const settings = readSettings(JSON.stringify(baked.settings), 'settings');
  if ('issues' in settings) throw new Error(`settings: ${settings.issues.map(({ code }) => code).join(', ')}`);
  const own: ClinicOwn = { settings: settings.settings, lists: {}, words: baked.words ?? {} };
  if (baked.thresholds !== undefined) {
    const checked = parseThresholds(baked.thresholds);
    if (!checked.ok) throw new Error(`thresholds: ${checked.problems.join('; ')}`);
    own.thresholds = checked.thresholds;
  }
  if (baked.logWords !== undefined) own.lists.logWords = must('logWords', checkLogWords(baked.logWords)).words;
  if (baked.topicOrder !== undefined)
    own.lists.topicOrder = must('topicOrder', checkTopicOrder({ rows: baked.topicOrder })).order;
  if (baked.medicines !== undefined) {
    const medicines = checkMedicines({ medicines: baked.medicines });
    if (!medicines) throw new Error('medicines');
    own.lists.medicines = medicines;
  }
  return own;
}

function must<T extends object>(name: string, checked: T | { problems: string[] }): T {
  if ('problems' in checked) throw new Error(`${name}: ${checked.problems.join(', ')}`);
  return checked;
}

/** The words of a place, with the clinic's own files in place of those the page was built of. */
export const wordsOf = (place: Place, { words }: ClinicOwn): Promise<Words> => ownWords(place, words);

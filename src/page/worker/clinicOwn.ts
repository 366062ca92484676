import type { Baked } from '../../model/baked.ts';
import { bringChanged, type Changed } from '../../papers/own.ts';
import { checkLogWords } from '../../schemas/logWords.ts';
import { checkMedicines } from '../../schemas/medicines.ts';
import { type FolderSettings, readSettings } from '../../schemas/settings.ts';
import { parseThresholds } from '../../schemas/thresholds.ts';
import { checkTopicOrder } from '../../topics/index.ts';

let settings: FolderSettings = {};

/** What a clinic's copy of the page begins with, below all that lies with files or is chosen. */
export const bakedSettings = (): FolderSettings => settings;

/**
 * Takes what a clinic put into its copy of the page, checked as the command checks it; '' in a plain page.
 * @throws Error that names the part which does not hold: the copy was changed by hand.
 */
export function takeBaked(text: string): void {
  if (text === '') return;
  const baked = JSON.parse(text) as Baked;
  const read = readSettings(JSON.stringify(baked.settings), 'settings');
  if ('issues' in read) throw new Error(`settings: ${read.issues.map(({ code }) => code).join(', ')}`);
  if (baked.thresholds !== undefined) {
    const checked = parseThresholds(baked.thresholds);
    if (!checked.ok) throw new Error(`thresholds: ${checked.problems.join('; ')}`);
  }
  const changed: Changed = { words: baked.words ?? {} };
  if (baked.logWords !== undefined) changed.logWords = must('logWords', checkLogWords(baked.logWords)).words;
  if (baked.topicOrder !== undefined)
    changed.topicOrder = must('topicOrder', checkTopicOrder({ rows: baked.topicOrder })).order;
  if (baked.medicines !== undefined) {
    const medicines = checkMedicines({ medicines: baked.medicines });
    if (!medicines) throw new Error('medicines');
    changed.medicines = medicines;
  }
  settings = read.settings;
  bringChanged(changed);
}

function must<T extends object>(name: string, checked: T | { problems: string[] }): T {
  if ('problems' in checked) throw new Error(`${name}: ${checked.problems.join(', ')}`);
  return checked;
}

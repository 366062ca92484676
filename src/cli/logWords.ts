import type { LogWords } from '../model/logbook.ts';
import { checkLogWords } from '../schemas/logWords.ts';
import { WrongUse } from './exits.ts';
import { reasonOf } from './gather.ts';
import { ownFile, ownPath } from './home.ts';

const PATH = 'templates/foods.json';

/** The words of logbooks that stand in templates, for a clinic to edit. */
export function logWords(): LogWords {
  let content: unknown;
  try {
    content = JSON.parse(ownFile(PATH).toString('utf8'));
  } catch (error) {
    throw new WrongUse('wrongLogWords', { path: ownPath(PATH), problem: reasonOf(error) });
  }
  const checked = checkLogWords(content);
  if ('problems' in checked) {
    throw new WrongUse('wrongLogWords', { path: ownPath(PATH), problem: checked.problems.join(', ') });
  }
  return checked.words;
}

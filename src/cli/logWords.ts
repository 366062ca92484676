import type { LogWords } from '../model/logbook.ts';
import { once } from '../once.ts';
import { checkLogWords } from '../schemas/logWords.ts';
import { WrongUse } from './exits.ts';
import { ownPath } from './home.ts';
import { ownJson } from './json.ts';

const PATH = 'templates/foods.json';

/** The words of logbooks that stand in templates, for a clinic to edit; read once, as the words of the papers are. */
export const logWords = once((): LogWords => {
  const checked = checkLogWords(ownJson(PATH, 'wrongLogWords'));
  if ('problems' in checked) {
    throw new WrongUse('wrongLogWords', { path: ownPath(PATH), problem: checked.problems.join(', ') });
  }
  return checked.words;
});

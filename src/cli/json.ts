import { reasonOf, WrongUse } from './exits.ts';
import { ownFile, ownPath } from './home.ts';
import { readText } from './plainFile.ts';

/** Mistakes in a file that are told with its path and the problem. */
type Problem = 'wrongLayout' | 'wrongThresholds' | 'wrongLogWords' | 'wrongMedicines' | 'wrongTopics';

/**
 * The JSON of a file that steers a run. Throws WrongUse with `wrong` where it is none, and never quotes it: the path may
 * lead to any file.
 */
export const jsonOf = (path: string, wrong: Problem): unknown => parsed(path, () => readText(path), wrong);

/** The same of a file of this package that a clinic may have edited. */
export const ownJson = (file: string, wrong: Problem): unknown =>
  parsed(ownPath(file), () => ownFile(file).toString('utf8'), wrong);

function parsed(path: string, text: () => string, wrong: Problem): unknown {
  try {
    return JSON.parse(text());
  } catch (error) {
    if (error instanceof WrongUse) throw error;
    throw new WrongUse(wrong, { path, problem: error instanceof SyntaxError ? 'JSON' : reasonOf(error) });
  }
}

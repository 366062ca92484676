import { WrongUse } from './exits.ts';
import { reasonOf } from './gather.ts';
import { ownFile, ownPath } from './home.ts';

/**
 * The JSON of a file that steers a run. Throws WrongUse with `wrong` where it is none, and never quotes it: the path may
 * lead to any file.
 */
export function jsonOf(path: string, text: (path: string) => string, wrong: string): unknown {
  try {
    return JSON.parse(text(path));
  } catch (error) {
    if (error instanceof WrongUse) throw error;
    throw new WrongUse(wrong, { path, problem: error instanceof SyntaxError ? 'JSON' : reasonOf(error) });
  }
}

/** The same of a file of this package that a clinic may have edited. */
export const ownJson = (file: string, wrong: string): unknown =>
  jsonOf(ownPath(file), () => ownFile(file).toString('utf8'), wrong);

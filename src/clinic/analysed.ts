import type { Analysis, Refusal } from '../analyse.ts';
import { withWords } from '../language/index.ts';
import type { Outcome } from '../model/clinic.ts';
import type { Input } from '../model/input.ts';
import type { Settings } from '../model/settings.ts';
import { namedFor, withNames } from '../papers/alias.ts';
import { openWorkbooks } from '../readers/containers/workbook.ts';
import { factsOf } from './facts.ts';
import { called, read, refusalsIn, refused } from './outcome.ts';

/** What a person's files are called in their papers: by where they lie within the person's own folder. */
export const nameInside = (path: string): string => path.slice(path.indexOf('/') + 1);

/** How one person's turn ends by what is in the files, and what papers can be made of; null: of nothing. */
export async function analysed(
  blank: Outcome,
  inputs: readonly Input[],
  settings: Settings,
  analyse: (inputs: readonly Input[], settings: Settings) => Analysis | Refusal,
): Promise<{ outcome: Outcome; analysis: Analysis | null }> {
  const outcome = called(blank, settings.person);
  const named = namedFor(settings.person, inputs);
  const analysis = analyse(await openWorkbooks(named.inputs), withNames(settings, named.renamed));
  if (analysis.ok) {
    return { outcome: read(outcome, analysis.files, analysis.timeline, factsOf(analysis)), analysis };
  }
  // Whoever looks for the file knows it by its own name; the worklist is for them.
  const said = refusalsIn(analysis.issues).map((refusal) => withWords(refusal, named.own));
  return { outcome: refused(read(outcome, analysis.files, null, null), ...said), analysis: null };
}

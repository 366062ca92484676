import { LANGUAGES, placeOf } from '../language/index.ts';
import type { Agreed } from '../model/visits.ts';
import { teller } from '../papers/teller.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import type { Door } from './door.ts';
import { EXIT, WrongUse } from './exits.ts';
import { readText } from './plainFile.ts';
import { paperWords } from './words.ts';

/** Fields of the form in the order of the paper, each with the words that stand beside it there. */
const FIELDS = {
  goal: 'goals',
  step: 'step',
  helper: 'helper',
  nextVisit: 'next',
  sure: 'sure',
  question: 'question',
} as const satisfies Record<keyof Agreed, string>;

const NAMES = Object.keys(FIELDS) as (keyof Agreed)[];

/** Prints an empty form of what was agreed, for `--agreed`. */
export async function agreedForm({ language, region }: Pick<FolderSettings, 'language' | 'region'>, door: Door) {
  const place = placeOf(language, region) ?? placeOf('en', undefined);
  if (!place) return EXIT.usage;
  const said = teller(paperWords(place));
  door.print(said.plain('pages.agreed.form'));
  for (const name of NAMES) door.print(`${said.plain(`pages.agreed.${FIELDS[name]}`)}: `);
  return EXIT.done;
}

/** What was agreed, from the file that `--agreed` names. Throws WrongUse with every place that does not fit. */
export async function agreedIn(path: string): Promise<Agreed> {
  const { readAgreed } = await import('../schemas/agreed.ts');
  const tellers = LANGUAGES.flatMap((language) => placeOf(language, undefined) ?? []).map((place) =>
    teller(paperWords(place)),
  );
  const labels = (name: keyof Agreed) => tellers.map((each) => each.plain(`pages.agreed.${FIELDS[name]}`));
  const read = readAgreed(readText(path), {
    goal: labels('goal'),
    step: labels('step'),
    helper: labels('helper'),
    nextVisit: labels('nextVisit'),
    sure: labels('sure'),
    question: labels('question'),
  });
  if (!read.ok) throw new WrongUse('wrongAgreed', { path, problem: read.problems.join('; ') });
  return read.agreed;
}

import { LANGUAGES, placeOf } from '../language/index.ts';
import type { Agreed } from '../model/visits.ts';
import { teller } from '../papers/teller.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import type { Door } from './door.ts';
import { EXIT, WrongUse } from './exits.ts';
import { readText } from './plainFile.ts';
import { paperWords } from './words.ts';

/** Prints an empty form of what was agreed, for `--agreed`. */
export async function agreedForm({ language, region }: Pick<FolderSettings, 'language' | 'region'>, door: Door) {
  const place = placeOf(language, region) ?? placeOf('en', undefined);
  if (!place) return EXIT.usage;
  const { agreedLines } = await import('../papers/agreedForm.ts');
  for (const line of agreedLines(teller(paperWords(place)))) door.print(line);
  return EXIT.done;
}

/** What was agreed, from the file that `--agreed` names. Throws WrongUse with every place that does not fit. */
export async function agreedIn(path: string): Promise<Agreed> {
  const { agreedFrom } = await import('../papers/agreedForm.ts');
  const places = LANGUAGES.flatMap((language) => placeOf(language, undefined) ?? []);
  const read = agreedFrom(
    readText(path),
    places.map((place) => teller(paperWords(place))),
  );
  if (!read.ok) throw new WrongUse('wrongAgreed', { path, problem: read.problems.join('; ') });
  return read.agreed;
}

import { join } from 'node:path';
import { analyse } from '../../analyse.ts';
import { fingerprint } from '../../bytes/hash.ts';
import { analysed, nameInside } from '../../clinic/analysed.ts';
import { because, blank, inWords, refused, wrongFromTheStart } from '../../clinic/outcome.ts';
import { visitsBefore } from '../../clinic/recorded.ts';
import { keyOf, stillGood } from '../../clinic/resume.ts';
import { issueSaid, type Place } from '../../language/index.ts';
import type { Outcome, Person } from '../../model/clinic.ts';
import type { Input } from '../../model/input.ts';
import { MOST_BYTES } from '../../papers/inputNames.ts';
import { makePapers, type PapersWanted, type PaperTools } from '../../papers/makePapers.ts';
import type { FolderSettings } from '../../schemas/settings.ts';
import { reasonOf, WrongUse } from '../exits.ts';
import { clearParts } from '../halfWritten.ts';
import { readPlainFile } from '../plainFile.ts';
import { hashesOf, lastOutcome, putInPlace } from './disk.ts';
import { dropHeld, heldAt, heldOf, hold } from './held.ts';
import { settlePerson } from './personSettings.ts';

/** One person's job, as it travels to a worker thread or through a queue. */
export interface Task {
  person: Person;
  /** Full paths of the clinic's folder and of the results. */
  folder: string;
  out: string;
  /** What was asked for everyone on the command line or in the folder's settings. */
  options: FolderSettings;
  /** Results of an earlier run, to compare with; full path. */
  since?: string | undefined;
  today: string;
  make: Pick<PapersWanted, 'further' | 'html' | 'numbers' | 'attach' | 'fhir' | 'fhirReadings'>;
  /** Only look: nothing is written. */
  dry: boolean;
}

/** `made`: done now. `kept`: what stood there was still good. `unsaved`: could not be written, with the system's reason. */
export interface Turn {
  outcome: Outcome;
  how: 'made' | 'kept' | 'unsaved';
  reason?: string;
  milliseconds: number;
}

/** The words of a language, what is missing in them, and a hash that tells them from others. */
export interface Spoken {
  words: unknown;
  missing: readonly string[];
  hash: string;
}

export interface TurnTools extends Omit<PaperTools, 'words'> {
  wordsFor(place: Place): Spoken;
  /** Of the template of web pages. */
  templateHash(): string;
}

/**
 * Reads one person's files, and makes what is missing or changed; it is kept back until everyone was looked at. Never throws for
 * what is in the files.
 */
export async function takeTurn(task: Task, tools: TurnTools): Promise<Turn> {
  const start = performance.now();
  const { person, out, dry } = task;
  const folder = join(out, person.stem);
  const stamp = { key: '', printed: task.today, version: tools.version };
  const end = (outcome: Outcome, how: Turn['how'], reason?: string): Turn => ({
    outcome,
    how,
    ...(reason === undefined ? {} : { reason }),
    milliseconds: Math.round(performance.now() - start),
  });
  const last = lastOutcome(folder);
  const put = (outcome: Outcome, files: Parameters<typeof putInPlace>[2] = []): Turn => {
    if (dry) return end(outcome, 'made');
    try {
      if (outcome.facts) return end(hold(out, outcome, files), 'made');
      dropHeld(out, person.stem);
      return end(putInPlace(folder, outcome, files, last), 'made');
    } catch (error) {
      return end(refused(outcome, because('unsaved', { actual: reasonOf(error) })), 'unsaved', reasonOf(error));
    }
  };

  const nothing = blank(person, stamp);
  if (person.wrong) return put(refused(nothing, wrongFromTheStart(person)));
  const inputs: Input[] = [];
  for (const name of person.files) {
    try {
      inputs.push({
        name: nameInside(name),
        bytes: readPlainFile(join(task.folder, name), MOST_BYTES),
      });
    } catch (error) {
      const why = reasonOf(error) === 'ENOENT' ? 'vanished' : 'cannotOpen';
      return put(refused(nothing, because(why, { file: name, actual: reasonOf(error) })));
    }
  }
  const inputHashes = inputs.map(({ bytes }) => fingerprint(bytes));
  let wanted: Awaited<ReturnType<typeof settlePerson>>;
  try {
    wanted = await settlePerson(task);
  } catch (error) {
    if (!(error instanceof WrongUse)) throw error;
    const said = { key: `cli.error.${error.key}`, params: inWords(error.details) };
    return put(refused({ ...nothing, inputHashes }, said));
  }
  if ('issues' in wanted) return put(refused({ ...nothing, inputHashes }, ...wanted.issues.map(issueSaid)));

  const { settings, place, paper, grey, large, agreed, fhirSystem, dateGiven } = wanted;
  const { words, missing, hash } = tools.wordsFor(place);
  if (missing.length > 0) return put(refused(nothing, because('halfTranslated', { actual: place.language })));
  const { today, ...lasting } = settings;
  const before = task.since === undefined ? [] : visitsBefore(lastOutcome(join(task.since, person.stem)));
  const key = keyOf({
    version: tools.version,
    wordsHash: task.make.html ? fingerprint(hash + tools.templateHash()) : hash,
    inputs: person.files.map((name, i) => [name, inputHashes[i]!]),
    wanted: {
      settings: dateGiven ? settings : lasting,
      paper,
      grey,
      large,
      ...(agreed === null ? {} : { agreed }),
      ...task.make,
      ...(before.length > 0 ? { before: before.map((facts) => facts.hash) } : {}),
      ...(task.make.fhir && fhirSystem !== undefined ? { fhirSystem } : {}),
      person: [person.code, person.row?.visit, person.row?.a1c, ...(person.row?.time ? [person.row.time] : [])],
    },
  });
  const outcome: Outcome = { ...nothing, key, printed: today, inputHashes, ...(before.length > 0 ? { before } : {}) };
  // A folder taken for an answer is not written to, so it is cleared here.
  if (!dry && last) clearParts(folder);
  if (stillGood(last, key, dry && last ? asRecorded(last) : hashesOf(folder, last), today)) return end(last!, 'kept');
  // Made by a run that ended before everyone was looked at.
  const held = dry ? null : heldOf(out, person.stem);
  if (held) clearParts(heldAt(out, person.stem));
  if (held && stillGood(held, key, hashesOf(heldAt(out, person.stem), held), today)) return end(held, 'kept');

  const { outcome: done, analysis } = await analysed(outcome, inputs, settings, (some, how) =>
    analyse(some, how, tools.version),
  );
  if (!analysis) return put(done);
  if (dry) return end(done, 'made');
  const making = { paper, grey, large, ...task.make, fhirSystem, snapshot: true, agreed };
  if (task.make.fhir) {
    const { fhirLeft } = await import('../../writers/fhir/index.ts');
    done.fhirLeft = fhirLeft(analysis, { readings: task.make.fhirReadings, system: fhirSystem });
  }
  return put(done, await makePapers(analysis, person.stem, making, { ...tools, words }));
}

const asRecorded = ({ outputs }: Outcome): Map<string, string> =>
  new Map(outputs.map(({ name, sha256 }) => [name, sha256]));

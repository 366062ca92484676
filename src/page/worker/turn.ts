import type { Analysis } from '../../analyse.ts';
import { fingerprint } from '../../bytes/hash.ts';
import { utf8 } from '../../bytes/text.ts';
import { analysed } from '../../clinic/analysed.ts';
import { because, blank, refused, wrongFromTheStart } from '../../clinic/outcome.ts';
import { asOutcome, visitsBefore } from '../../clinic/recorded.ts';
import { analyse, version } from '../../index.ts';
import { issueSaid, type Place } from '../../language/index.ts';
import type { Outcome, Said } from '../../model/clinic.ts';
import { makePapers } from '../../papers/makePapers.ts';
import { ownWords } from '../../papers/own.ts';
import type { Teller } from '../../papers/teller.ts';
import type { Wanted } from '../../papers/wanted.ts';
import { lettersWithout } from '../../writers/pdf/index.ts';
import type { Extras, Turn } from '../folderMessages.ts';
import type { SavedFile, Wish } from '../messages.ts';
import { emptyShelf, put, type Shelf } from './files.ts';
import { type Brought, paperTools, savedFile } from './papers.ts';
import { agreedTyped, inputsOf } from './reading.ts';
import { settle } from './settling.ts';

/** What the words of the page are needed for in a turn. */
export interface TurnWords {
  place: Place;
  forms: readonly Teller[];
}

interface Turned {
  outcome: Outcome;
  /** Absent: no papers can be made. */
  ready?: { analysis: Analysis; wanted: Wanted };
}

const blankFor = ({ person, today }: Pick<Wish, 'person' | 'today'>): Outcome =>
  blank(person.person!, { key: '', printed: today, version });

/** A fault of ours with this one person. Only the kind of error is passed on: its message may hold a person's text. */
const faulty = (outcome: Outcome, error: unknown): Outcome =>
  refused(outcome, because('fault', { actual: error instanceof Error ? error.name : 'unknown' }));

/** Reads one person of a folder, as the command's run does. Never fails for what is in the files. */
export async function takeTurn(turn: Turn, words: TurnWords): Promise<Turned> {
  const nothing = blankFor(turn.wish);
  try {
    return await read(turn, nothing, words);
  } catch (error) {
    return { outcome: faulty(nothing, error) };
  }
}

async function read({ wish, files, unopened }: Turn, nothing: Outcome, words: TurnWords): Promise<Turned> {
  const no = (outcome: Outcome, ...said: Said[]): Turned => ({ outcome: refused(outcome, ...said) });
  const { person } = wish.person;
  if (person?.wrong) return no(nothing, wrongFromTheStart(person));
  if (unopened) {
    const { file, actual } = unopened;
    return no(nothing, because(actual === 'NotFoundError' ? 'vanished' : 'cannotOpen', { file, actual }));
  }
  const shelf = emptyShelf();
  put(shelf, files);
  const inputs = inputsOf(shelf, wish);
  const inputHashes = inputs.map(({ bytes }) => fingerprint(bytes));
  const settledWish = settle(shelf, wish, words.place, words.forms);
  if ('issues' in settledWish) return no({ ...nothing, inputHashes }, ...settledWish.issues.map(issueSaid));
  const { wanted } = settledWish;
  const before = visitsBefore(recordOf(shelf, wish));
  const begun = {
    ...{ ...nothing, printed: wanted.settings.today, inputHashes },
    ...(before.length > 0 ? { before } : {}),
  };
  const { outcome, analysis } = await analysed(begun, inputs, wanted.settings, analyse);
  return analysis ? { outcome, ready: { analysis, wanted } } : { outcome };
}

/** What an earlier run left of somebody: nothing where it is damaged. Of it only the numbers are looked at, so no words are asked for. */
function recordOf({ bytes }: Shelf, { person: { record }, since }: Wish): Outcome | null {
  const lying = since && record !== undefined ? bytes.get(record) : undefined;
  if (lying === undefined) return null;
  try {
    return asOutcome(JSON.parse(utf8(lying)), () => true);
  } catch {
    return null;
  }
}

/** What one person's turn leaves in their folder. */
export async function papersOf(
  turn: Turn & { extras: Extras[] },
  words: TurnWords,
  brought: Brought,
): Promise<{ outcome: Outcome; files: SavedFile[]; lacking: string[] }> {
  const { outcome, ready } = await takeTurn(turn, words);
  if (!ready) return { outcome, files: [], lacking: [] };
  const { analysis, wanted } = ready;
  const { paper, grey, large, place } = wanted;
  const has = (extra: Extras): boolean => turn.extras.includes(extra);
  try {
    const making = {
      ...{ paper, grey, large, attach: false, snapshot: true, fhirReadings: false },
      ...{ further: has('further'), html: has('html'), numbers: has('numbers'), fhir: has('fhir') },
      agreed: turn.typed ? agreedTyped(turn.typed) : wanted.agreed,
    };
    const tools = paperTools(brought, await ownWords(place));
    const files = (await makePapers(analysis, turn.wish.person.stem, making, tools)).map(savedFile);
    const outputs = files.map(({ name, bytes }) => ({ name, bytes: bytes.length, sha256: fingerprint(bytes) }));
    const written = JSON.stringify([wanted.settings.person, wanted.agreed, analysis.timeline.notes]);
    const lacking = lettersWithout(written, brought.fonts);
    return { outcome: { ...outcome, outputs }, files, lacking };
  } catch (error) {
    return { outcome: faulty(blankFor(turn.wish), error), files: [], lacking: [] };
  }
}

import type { FileAccount } from '../analyse.ts';
import { issueSaid } from '../language/index.ts';
import type { Facts, Outcome, Person, Said } from '../model/clinic.ts';
import type { Issue } from '../model/input.ts';
import type { Params, Quantity } from '../model/quantity.ts';
import type { Below, Filled } from '../model/words.ts';
import { type MixUp, personMark } from './mixups.ts';

const word = (value: string): Quantity => ({ q: 'word', value });

interface Stamp {
  key: string;
  printed: string;
  version: string;
}

/** A person's outcome before anything is known of their files. */
export function blank({ code, stem, files, row }: Person, stamp: Stamp): Outcome {
  return {
    schema: 1,
    code,
    stem,
    visit: row?.visit ?? null,
    ...(row?.time === undefined ? {} : { time: row.time }),
    a1c: row?.a1c ?? null,
    inputs: files,
    inputHashes: [],
    persons: [],
    ...stamp,
    facts: null,
    refusals: [],
    outputs: [],
  };
}

/** No papers, and why. */
export const refused = (outcome: Outcome, ...refusals: Said[]): Outcome => ({
  ...outcome,
  facts: null,
  outputs: [],
  refusals,
});

export function read(outcome: Outcome, files: readonly FileAccount[], facts: Facts | null): Outcome {
  const persons = [...new Set(files.flatMap(({ persons }) => persons.map(personMark)))];
  return { ...outcome, persons, facts };
}

/** Why nothing can be made, in the words of the clinic run. */
export const because = <Why extends Below<'clinic.unread'>>(
  why: Why,
  ...[texts]: Filled<`clinic.unread.${Why}`, string>
): Said => ({ key: `clinic.unread.${why}`, params: inWords(texts ?? {}) });

/** Texts as parameters of a message. */
export const inWords = (texts: Readonly<Record<string, string>>): Params =>
  Object.fromEntries(Object.entries(texts).map(([name, value]) => [name, word(value)]));

/** What was found wrong before a file was opened. */
export const wrongFromTheStart = ({ wrong, code }: Person): Said =>
  because(wrong!.why, { actual: wrong!.actual ?? '', code });

/** So many warnings are told beside "no readings", which alone says little. */
const WARNINGS = 2;

/** Why nothing can be made of someone's files, in the reader's own words. */
export function refusalsIn(issues: readonly Issue[]): Said[] {
  const refusals = issues.filter(({ level }) => level === 'refusal');
  const warnings = refusals.every(({ code }) => code === 'no-readings')
    ? issues.filter(({ level, code }, i) => level === 'warning' && issues.findIndex((one) => one.code === code) === i)
    : [];
  return [...warnings.slice(0, WARNINGS), ...refusals].map(issueSaid);
}

export const mixedUp = (outcome: Outcome, { why, others }: MixUp): Outcome =>
  refused(outcome, because(why, { others: others.join(', ') }));

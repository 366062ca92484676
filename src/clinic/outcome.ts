import type { FileAccount } from '../analyse.ts';
import { issueSaid } from '../language/index.ts';
import type { Facts, Outcome, Person, Said } from '../model/clinic.ts';
import type { Issue } from '../model/input.ts';
import type { Params, Quantity } from '../model/quantity.ts';
import type { Timeline } from '../model/timeline.ts';
import type { Below, Filled } from '../model/words.ts';
import { type MixUp, personMark } from './mixups.ts';
import { tracesOf } from './traces.ts';
import { codeOfFile, isInFolder, top } from './unreadOnes.ts';

const word = (value: string): Quantity => ({ q: 'word', value });

interface Stamp {
  key: string;
  printed: string;
  version: string;
}

/** A person's outcome before anything is known of their files. */
export function blank({ code, stem, files, row, by }: Person, stamp: Stamp): Outcome {
  return {
    schema: 1,
    code,
    stem,
    visit: row?.visit ?? null,
    ...(row?.time === undefined ? {} : { time: row.time }),
    a1c: row?.a1c ?? null,
    ...(by === undefined ? {} : { by }),
    inputs: files,
    inputHashes: [],
    persons: [],
    own: marksOf(code, row?.name, ...files.map((path) => (isInFolder(path) ? top(path) : codeOfFile(path)))),
    traces: [],
    ...stamp,
    facts: null,
    refusals: [],
    outputs: [],
  };
}

const marksOf = (...names: (string | undefined)[]): string[] => [
  ...new Set(names.flatMap((name) => (name === undefined ? [] : personMark(name)))),
];

/** What the settings beside the files call this person is their own as well. */
export const called = (outcome: Outcome, { name, code }: { name?: string; code?: string }): Outcome => ({
  ...outcome,
  own: [...new Set([...(outcome.own ?? []), ...marksOf(name, code)])],
});

/** No papers, and why. */
export const refused = (outcome: Outcome, ...refusals: Said[]): Outcome => ({
  ...outcome,
  facts: null,
  outputs: [],
  refusals,
});

/** `timeline`: null where there is none, as something stood against it. */
export function read(
  outcome: Outcome,
  files: readonly FileAccount[],
  timeline: Timeline | null,
  facts: Facts | null,
): Outcome {
  const persons = marksOf(...files.flatMap(({ persons }) => persons));
  return { ...outcome, persons, traces: tracesOf(files, timeline), facts };
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
  because(wrong!.why, { actual: wrong!.actual ?? '', code, lines: wrong!.lines ?? '' });

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

export const mixedUp = (outcome: Outcome, { why, others, file = '' }: MixUp): Outcome =>
  refused(outcome, because(why, { others: others.join(', '), file }));

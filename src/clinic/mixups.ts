import { fingerprint } from '../bytes/hash.ts';
import type { Outcome } from '../model/clinic.ts';
import { plain } from '../readers/table/vocabulary.ts';
import { MAY_BE_EXAMPLE } from './traces.ts';

/**
 * A code or name as it is compared: order of names, case, accents and signs do not part people. Enough to see that two agree,
 * too little to tell whose it is.
 */
export const personMark = (text: string): string => fingerprint(compared(text)).slice(0, 16);

function compared(text: string): string {
  const parts = plain(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((part) => part !== '');
  const words = parts.some((part) => /\p{N}/u.test(part)) ? parts : parts.sort();
  return words.join(' ') || text.trim();
}

/** What programs write where nobody gave a name: two files that say so name nobody. From memory. */
const NOBODY = [
  'patient',
  'user',
  'profile',
  'person',
  'owner',
  'default',
  'test',
  'demo',
  'paciente',
  'usuario',
  'perfil',
];
const nobody = new Set(
  [...NOBODY, 'me', 'self', 'yo', ''].flatMap((word) => ['', ' 0', ' 1', ' 2'].map((n) => personMark(word + n))),
);

/** Why a person's files may be someone else's, and the codes of those others. */
export interface MixUp {
  why: 'sameFile' | 'sameReadings' | 'samePerson' | 'otherCode';
  others: string[];
  /** The file that lies with several, as it is called here. */
  file?: string;
}

/** So many others are named. */
const NAMED = 4;

/**
 * People whose files may have been swapped: the same readings lie with two people, two people's files name one person, or a
 * file names someone else in the folder. By results folder; both sides are told, as nobody knows which one is wrong.
 */
export function findMixUps(outcomes: readonly Outcome[]): Map<string, MixUp> {
  const found = new Map<string, MixUp>();
  const tell = (why: MixUp['why'], sharers: readonly Outcome[], fileOf: (one: Outcome) => string | undefined): void => {
    if (sharers.length < 2) return;
    for (const one of sharers) {
      if (found.has(one.stem)) continue;
      const file = fileOf(one);
      const others = sharers.slice(0, NAMED + 1).filter((other) => other !== one);
      const codes = others.slice(0, NAMED).map(({ code }) => code);
      if (sharers.length - 1 > NAMED) codes.push('…');
      found.set(one.stem, { why, others: codes, ...(file === undefined ? {} : { file }) });
    }
  };
  for (const [trace, sharers] of groupBy(outcomes, tracesIn)) {
    // A form with an example in it lies with many; what lies with two may be the one's or the other's.
    if (trace.startsWith(MAY_BE_EXAMPLE) && sharers.length > 2) continue;
    const [kind, hash = ''] = trace.split(':');
    const fileOf = ({ inputs, inputHashes }: Outcome) => inputs[inputHashes.findIndex((one) => one.startsWith(hash))];
    if (kind === 'day') tell('sameReadings', sharers, () => undefined);
    else tell('sameFile', sharers, fileOf);
  }
  const noFile = () => undefined;
  for (const [mark, sharers] of groupBy(outcomes, ({ persons }) => persons)) {
    // Two people of one name, as the manifest says, are no mix-up.
    const strangers = sharers.filter((one) => !ownOf(one).includes(mark));
    if (!nobody.has(mark) && strangers.length > 0) tell('samePerson', sharers, noFile);
  }
  const owners = groupBy(outcomes, ownOf);
  for (const outcome of outcomes) {
    for (const person of outcome.persons) {
      const others = owners.get(person) ?? [];
      if (others.length > 0 && !others.includes(outcome)) tell('otherCode', [outcome, ...others], noFile);
    }
  }
  return found;
}

const ownOf = ({ own, code }: Outcome): string[] => own ?? [personMark(code)];
const tracesIn = ({ traces, inputHashes }: Outcome): string[] =>
  traces ?? inputHashes.map((hash) => `file:${hash.slice(0, 16)}`);

/** Those who share a mark, by mark. */
function groupBy(outcomes: readonly Outcome[], marksOf: (outcome: Outcome) => readonly string[]) {
  const groups = new Map<string, Outcome[]>();
  for (const outcome of outcomes) {
    for (const mark of new Set(marksOf(outcome))) {
      const group = groups.get(mark);
      if (group) group.push(outcome);
      else groups.set(mark, [outcome]);
    }
  }
  return groups;
}

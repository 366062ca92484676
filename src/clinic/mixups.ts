import { fingerprint } from '../bytes/hash.ts';
import type { Outcome } from '../model/clinic.ts';

/** A code or name as it is compared: enough to see that two agree, too little to tell whose it is. */
export const personMark = (text: string): string => fingerprint(text.trim().toLowerCase()).slice(0, 16);

/** Why a person's files may be someone else's, and the codes of those others. */
export interface MixUp {
  why: 'sameFile' | 'samePerson' | 'otherCode';
  others: string[];
}

/**
 * People whose files may have been swapped: the same file lies with two people, two people's files name one person, or a
 * file names the code of someone else in the folder. By results folder; both sides are told, as nobody knows which
 * one is wrong.
 */
export function findMixUps(outcomes: readonly Outcome[]): Map<string, MixUp> {
  const found = new Map<string, MixUp>();
  const codes = new Map(outcomes.map((outcome) => [personMark(outcome.code), outcome]));
  const tell = (why: MixUp['why'], sharers: readonly Outcome[]): void => {
    if (sharers.length < 2) return;
    for (const one of sharers) {
      const others = sharers.filter((other) => other !== one).map(({ code }) => code);
      if (!found.has(one.stem)) found.set(one.stem, { why, others });
    }
  };
  for (const sharers of groupBy(outcomes, ({ inputHashes }) => inputHashes)) tell('sameFile', sharers);
  for (const sharers of groupBy(outcomes, ({ persons }) => persons)) tell('samePerson', sharers);
  for (const outcome of outcomes) {
    for (const person of outcome.persons) {
      const owner = codes.get(person);
      if (owner && owner !== outcome) tell('otherCode', [outcome, owner]);
    }
  }
  return found;
}

/** Those who share a mark, each group once. */
function groupBy(outcomes: readonly Outcome[], marksOf: (outcome: Outcome) => readonly string[]): Outcome[][] {
  const groups = new Map<string, Outcome[]>();
  for (const outcome of outcomes) {
    for (const mark of new Set(marksOf(outcome))) groups.set(mark, [...(groups.get(mark) ?? []), outcome]);
  }
  return [...groups.values()];
}

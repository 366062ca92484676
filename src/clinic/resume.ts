import { fingerprint } from '../bytes/hash.ts';
import type { Outcome } from '../model/clinic.ts';

/** Everything a person's outputs depend on, besides the date of printing. */
export interface Dependencies {
  version: string;
  /** Of all words. */
  wordsHash: string;
  /** SHA-256 of each input, with its name. */
  inputs: [name: string, hash: string][];
  /** Everything asked for: settings, paper, which outputs. Without the date, unless a user gave one. */
  wanted: unknown;
}

/** The same key, the same outputs. */
export function keyOf({ version, wordsHash, inputs, wanted }: Dependencies): string {
  return fingerprint(JSON.stringify([version, wordsHash, inputs, sorted(wanted)]));
}

/** What is known of the files that stand in the results folder: SHA-256 by name, of those that are there. */
export type Present = ReadonlyMap<string, string>;

/**
 * Whether what stands there is what would be made now. A file that was changed, cut short or taken away since means it
 * is not. A refusal may have been about a date in the future, so it holds on its own day only.
 */
export function stillGood(last: Outcome | null, key: string, present: Present, today: string): boolean {
  if (last?.schema !== 1 || last.key !== key) return false;
  if (!last.facts) return last.printed === today && last.outputs.length === 0;
  return last.outputs.length > 0 && last.outputs.every(({ name, sha256 }) => present.get(name) === sha256);
}

/** Names in one order, whatever order they were given in. */
function sorted(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, inner]) => [name, sorted(inner)]);
}

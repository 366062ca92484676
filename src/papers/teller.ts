import { issueSaid, type Speaker, speakerOf, textAt, withWords } from '../language/index.ts';
import type { Issue, Ledger } from '../model/input.ts';
import type { Params, Quantity } from '../model/quantity.ts';
import type { Filled, WordKey } from '../model/words.ts';
import { targetSets } from '../targets/index.ts';

/** A sentence of ours within another: what it holds of a file's text was made printable when it was said. */
interface Sentence {
  sentence: string;
}

type Text = string | number | Sentence;

/** What a door says: lines only, in one language. */
export interface Teller {
  say<K extends WordKey>(key: K, ...filled: Filled<K, Text>): string;
  /** The words at a key as they stand, for help texts: nothing is filled in, so nothing need be parsed. */
  plain(key: WordKey): string;
  speaker: Speaker;
}

export function teller(words: unknown): Teller {
  const voice = speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
  const say = (key: string, texts?: Readonly<Record<string, Text>>): string =>
    voice.repeat({ key, params: asParams(texts) });
  return {
    say: say as Teller['say'],
    plain: (key: string) => String(textAt(words, key) ?? key),
    speaker: voice,
  };
}

export const asParams = (texts: Readonly<Record<string, Text>> = {}): Params =>
  Object.fromEntries(Object.entries(texts).map(([name, value]) => [name, quantity(value)]));

function quantity(value: Text): Quantity {
  if (typeof value === 'number') return { q: 'count', value };
  return { q: 'word', value: typeof value === 'string' ? printable(value) : value.sentence };
}

/** Text from a file could move the cursor or turn the writing direction of a terminal. */
export const printable = (text: string): string => text.replace(UNSEEN, seen);

/** The same of a line of ours that holds such text: the pairs that keep right-to-left text apart stay. */
export const printableLine = (line: string): string =>
  line.replace(UNSEEN, (sign) => (sign === '\u2068' || sign === '\u2069' ? sign : seen(sign)));

/** The same of JSON: what is not printed as it stands is written in digits, and means the same. */
export const printableJson = (json: string): string =>
  json.replace(UNSEEN, (sign) => (sign === '\n' ? sign : sign.split('').map(inDigits).join('')));

const inDigits = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;
const seen = (sign: string): string => (sign === '\t' || sign === '\n' ? ' ' : '\ufffd');

export const accounts = (tell: Teller, ledger: Ledger): string => tell.say('cli.told.rows', { ...ledger });

/** What an issue says, made printable. */
export function issueMessage({ speaker }: Teller, issue: Issue): string {
  return speaker.repeat(withWords(issueSaid(issue), printable));
}

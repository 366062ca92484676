import { type Speaker, speaker } from '../language/index.ts';
import type { Issue, Ledger } from '../model/input.ts';
import type { Params } from '../model/quantity.ts';
import { targetSets } from '../targets/index.ts';
import type { WrongUse } from './exits.ts';

/** What the door says in a terminal. Lines only, no colour, no movement: it reads the same in a log. */
export interface Teller {
  say(key: string, texts?: Record<string, string | number>): string;
  has(key: string): boolean;
  /** The words at a key as they stand, for help texts: nothing is filled in, so nothing need be parsed. */
  plain(key: string): string;
  speaker: Speaker;
}

export function teller(words: unknown): Teller {
  const voice = speaker(words, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
  return {
    say: (key, texts = {}) => voice.say(key, asParams(texts)),
    has: voice.has,
    plain: (key) => plainWords(words, key),
    speaker: voice,
  };
}

function plainWords(words: unknown, key: string): string {
  let at = words;
  for (const step of key.split('.')) at = (at as Record<string, unknown> | undefined)?.[step];
  return typeof at === 'string' ? at : key;
}

const asParams = (texts: Record<string, string | number>): Params =>
  Object.fromEntries(
    Object.entries(texts).map(([name, value]) => [
      name,
      typeof value === 'number' ? { q: 'count' as const, value } : { q: 'word' as const, value: printable(value) },
    ]),
  );

/** Text from a file could move the cursor or turn the writing direction of a terminal. */
export const printable = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (sign) => (sign === '\t' || sign === '\n' ? ' ' : '\ufffd'));

export const wrongUse = (tell: Teller, error: WrongUse): string => tell.say(`cli.error.${error.key}`, error.details);

export const accounts = (tell: Teller, ledger: Ledger): string => tell.say('cli.told.rows', { ...ledger });

/** What an issue says; its words may use any of its fields. */
export const issueMessage = (tell: Teller, issue: Issue): string =>
  tell.say(`issues.${issue.code}`, {
    file: issue.origin?.file ?? '',
    line: issue.origin?.line ?? 0,
    column: issue.origin?.column ?? 0,
    actual: issue.actual ?? '',
    expected: issue.expected ?? '',
    option: issue.option ?? '',
    count: issue.count ?? 1,
  });

/** One issue as a line: where and what. */
function issueLine(tell: Teller, issue: Issue): string {
  const message = issueMessage(tell, issue);
  const { origin } = issue;
  if (!origin) return message;
  const file = origin.file;
  return origin.line > 0
    ? tell.say('cli.told.place', { file, line: String(origin.line), message })
    : tell.say('cli.told.placeNoLine', { file, message });
}

const LEVELS: Issue['level'][] = ['refusal', 'warning', 'note'];
/** So many of one kind are shown one by one; the rest are counted here and listed in full in the set-aside file. */
const SHOWN = 5;

/** Issues grouped by weight and kind, the gravest first, each group cut short with a count of the rest. */
export function issueLines(tell: Teller, issues: readonly Issue[], shown = SHOWN): string[] {
  const lines: string[] = [];
  for (const level of LEVELS) {
    const kinds = new Map<string, Issue[]>();
    for (const issue of issues) {
      if (issue.level !== level) continue;
      kinds.set(issue.code, [...(kinds.get(issue.code) ?? []), issue]);
    }
    for (const kind of kinds.values()) {
      for (const issue of kind.slice(0, shown)) {
        lines.push(`${tell.say(`cli.told.level.${level}`)}: ${issueLine(tell, issue)}`);
        if (issue.option) lines.push(`  ${tell.say('cli.told.option', { option: issue.option })}`);
      }
      if (kind.length > shown) lines.push(`  ${tell.say('cli.told.more', { n: kind.length - shown })}`);
    }
  }
  return lines;
}

import { layered, type Words } from '../../language/index.ts';
import type { Issue } from '../../model/input.ts';
import { issueMessage, type Teller, teller } from '../../papers/teller.ts';
import type { Line } from '../messages.ts';

/** What the worker says: in the words of a language, and in English where only the command has words for it. */
export const tellerOf = (english: Words, words: Words): Teller => teller(layered(english, words));

/**
 * A sentence that names an option of the command is no business of a page, which asks instead: it is left out. Of what else
 * an issue says nothing is.
 */
export function withoutOptions(text: string): string {
  const kept = sentences(text).filter((sentence) => !/(^|[\s('"`\u2068])--[a-z]/.test(sentence));
  return kept.join(' ').trim();
}

const sentences = (text: string): string[] => text.split(/(?<=[.?!][\u2069)»”"']*)\s+(?=[\p{Lu}¿¡«“"\u2068(])/u);

/** Issues in the order they came up, at most so many of a kind. */
export function linesOf(tell: Teller, issues: readonly Issue[], own: (text: string) => string, most = 5): Line[] {
  const seen = new Map<string, number>();
  return issues.flatMap((issue) => {
    const n = (seen.get(issue.code) ?? 0) + 1;
    seen.set(issue.code, n);
    if (n > most) return [];
    return [{ level: issue.level, text: own(withoutOptions(issueMessage(tell, issue))), place: placeOf(issue, own) }];
  });
}

const placeOf = ({ origin }: Issue, own: (text: string) => string): string => {
  if (origin === undefined) return '';
  return origin.line === 0 ? own(origin.file) : `${own(origin.file)}:${origin.line}`;
};

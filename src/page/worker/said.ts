import { layered, type Words } from '../../language/index.ts';
import type { Issue } from '../../model/input.ts';
import { issueMessage, type Teller, teller } from '../../papers/teller.ts';
import { placesOf } from '../../readers/book.ts';
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

/** Issues in the order they came up, at most so many of a kind, and how many more there are. */
export function linesOf(tell: Teller, issues: readonly Issue[], own: (text: string) => string, most = 5): Line[] {
  const places = placesOf(issues);
  const kinds = new Map<string, { shown: number; rest: number; last: Line }>();
  const lines = issues.flatMap((issue, i) => {
    const kind = kinds.get(issue.code);
    if (kind && kind.shown === most) {
      kind.rest += places[i]!;
      return [];
    }
    const line = {
      level: issue.level,
      text: own(withoutOptions(issueMessage(tell, issue))),
      place: placeOf(issue, own),
    };
    kinds.set(issue.code, { shown: (kind?.shown ?? 0) + 1, rest: (kind?.rest ?? 0) + places[i]! - 1, last: line });
    return [line];
  });
  for (const { rest, last } of kinds.values())
    if (rest > 0)
      lines.splice(lines.indexOf(last) + 1, 0, {
        level: last.level,
        text: tell.say('cli.told.more', { n: rest }),
        place: '',
      });
  return lines;
}

const placeOf = ({ origin }: Issue, own: (text: string) => string): string => {
  if (origin === undefined) return '';
  return origin.line === 0 ? own(origin.file) : `${own(origin.file)}:${origin.line}`;
};

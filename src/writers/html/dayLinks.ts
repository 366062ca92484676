import { el, type Html } from './element.ts';

/** Words by which a text names a day, each with the day: YYYY-MM-DD. Words that could be two days' are none's. */
export type DayNames = ReadonlyMap<string, string>;

/** What can be pressed itself, and what is no running text. */
const NOT_WITHIN = new Set([
  'a',
  'button',
  'label',
  'summary',
  'select',
  'option',
  'input',
  'caption',
  'legend',
  'figcaption',
]);

/**
 * Pieces of a page in which every date of a day that can be shown leads there. Dates are found in the finished text: whatever
 * wrote a sentence need not know of it, and a date out of a file leads to the same day. A date of another year is none of them.
 */
export function withDayLinks(pieces: readonly Html[], days: DayNames): Html[] {
  if (days.size === 0) return [...pieces];
  // Backwards: of words that begin alike the longer ones come first.
  const names = [...days.keys()].sort().reverse().map(escaped);
  const dates = new RegExp(`(?<![\\p{L}\\p{N}])(?:${names.join('|')})(?![\\p{L}\\p{N}]|${OTHER_YEAR})`, 'gu');
  const linked = (piece: Html): Html[] => {
    if (typeof piece === 'string') return parts(piece, dates, days);
    if ('drawn' in piece || NOT_WITHIN.has(piece.tag)) return [piece];
    return [{ ...piece, children: piece.children.flatMap(linked) }];
  };
  return pieces.flatMap(linked);
}

const OTHER_YEAR = ',?[ \\u00a0](?:del?[ \\u00a0])?(?:19|20)\\d\\d(?!\\d)';

const escaped = (text: string): string =>
  text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/[ \u00a0]/g, '[ \\u00a0]');

function parts(text: string, dates: RegExp, days: DayNames): Html[] {
  const found: Html[] = [];
  let last = 0;
  for (const match of text.matchAll(dates)) {
    const date = days.get(match[0].replaceAll('\u00a0', ' '));
    if (date === undefined) continue;
    // No address: nothing is left, and a printed paper holds no link.
    const link = el('a', { class: 'day', role: 'button', tabindex: 0, 'data-day': date }, match[0]);
    found.push(text.slice(last, match.index), link);
    last = match.index + match[0].length;
  }
  if (last === 0) return [text];
  return [...found, text.slice(last)].filter((part) => part !== '');
}

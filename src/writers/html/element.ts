import { withoutMarkup } from '../markup.ts';

/** A piece of a page. A string is always text: nothing in it can become markup. */
export type Html = string | Element | Drawn;

export interface Element {
  tag: string;
  attributes: Attributes;
  children: readonly Html[];
}

/** Markup or code of our own making, printed as it is. Only SVG from our own writer, the style and the script. */
export interface Drawn {
  drawn: string;
}

/** `true` prints the bare name; undefined and false leave the attribute out. */
export type Attributes = Record<string, string | number | boolean | undefined>;

/** An element with its attributes and what stands in it. */
export const el = (tag: string, attributes: Attributes = {}, ...children: readonly Html[]): Element => ({
  tag,
  attributes,
  children,
});

export const drawn = (markup: string): Drawn => ({ drawn: markup });

const VOID = new Set(['br', 'col', 'hr', 'input', 'meta']);

export function print(piece: Html): string {
  if (typeof piece === 'string') return escapeText(piece);
  if ('drawn' in piece) return piece.drawn;
  const { tag, children } = piece;
  let open = `<${tag}`;
  for (const [name, value] of Object.entries(piece.attributes)) {
    if (value === undefined || value === false) continue;
    open += value === true ? ` ${name}` : ` ${name}="${escapeText(String(value))}"`;
  }
  if (VOID.has(tag)) return `${open}>`;
  let inside = '';
  for (const child of children) inside += print(child);
  return `${open}>${inside}</${tag}>${BLOCKS.has(tag) ? '\n' : ''}`;
}

/** A line each in the file, for those who read it; a space between these never shows. */
const BLOCKS = new Set(['p', 'li', 'tr', 'section', 'figure', 'details', 'h2', 'h3', 'h4', 'head', 'style', 'script']);

/** Most texts are plain: one look spares them three. */
const PLAIN = /^[\n !#-%(-;=?-~\u00a0-\u024f\u2010-\u2027]*$/;

/**
 * Text as HTML shows it. Controls are dropped, halves of surrogate pairs replaced; so are the marks that turn the
 * writing direction of all that follows (U+202A to U+202E): a note could otherwise change how its sentence reads.
 */
const escapeText = (text: string): string =>
  PLAIN.test(text)
    ? text
    : withoutMarkup(text.replace(/(?![\n\t])[\p{Cc}\u202a-\u202e]/gu, '').replace(/\p{Cs}/gu, '\ufffd'));

import { type ByteText, isUtf8, textOf } from '../../bytes/text.ts';
import { type Elements, fromBytes, inMemory, type JsonText, walk } from './elements.ts';
import { objectIn } from './fields.ts';
import { findLines, findLists, type Places } from './places.ts';

/** Larger texts are not held as a whole, but parsed element by element, anew whenever one is asked for (ours). */
const WHOLE = 4_000_000;
/** Lines looked at to tell one JSON text a line from one text over many lines. */
const LINES_TRIED = 10;

/**
 * JSON as UTF-8 (RFC 8259; a byte-order mark is let pass), or one JSON text a line. The elements of a large text are not
 * checked here: `walk` does. `whole` is the size up to which a text is parsed in one piece.
 */
export function openJson(source: Uint8Array, whole = WHOLE): JsonText | { brokenAt: number } {
  const marked = source[0] === 0xef && source[1] === 0xbb && source[2] === 0xbf;
  const from = marked ? 3 : 0;
  const bytes = source.subarray(from);
  const encoding = isUtf8(bytes) ? 'utf8' : 'latin1';
  if (bytes.length > whole) return openLarge(bytes, encoding);
  const text = textOf(bytes, encoding);
  try {
    const value: unknown = JSON.parse(text);
    const lists = findLists(bytes).byKey;
    if (Array.isArray(value)) {
      return { form: 'array', elements: inMemory(value, lists.get('')), outer: undefined, inside: new Map() };
    }
    const outer = objectIn(value);
    const inside = new Map<string, Elements>();
    for (const [key, list] of Object.entries(outer ?? {}))
      if (Array.isArray(list)) inside.set(key, inMemory(list, lists.get(key)));
    return { form: 'object', elements: inMemory([value]), outer, inside };
  } catch {
    const places = findLines(bytes);
    if (!holdTexts(bytes, places)) return { brokenAt: faultOf(bytes, encoding) };
    const lines = fromBytes(bytes, places, encoding);
    const opened: JsonText = { form: 'lines', elements: lines, outer: undefined, inside: new Map() };
    const values: unknown[] = new Array(lines.count);
    const { brokenAt } = walk(opened, lines, (value, i) => {
      values[i] = value;
    });
    if (brokenAt > 0) return { brokenAt: faultOf(bytes, encoding) };
    return { ...opened, elements: { ...lines, value: (i) => values[i] } };
  }
}

function openLarge(bytes: Uint8Array, encoding: ByteText): JsonText | { brokenAt: number } {
  const places = findLines(bytes);
  const lines = fromBytes(bytes, places, encoding);
  let good = 0;
  const tried = Math.min(LINES_TRIED, lines.count);
  // Many lines, so that no single one of them is the whole text.
  for (let i = 0; i < tried && tried > 1; i++) if (isText(lines, i)) good++;
  if (good > 0 && good * 2 >= tried) return { form: 'lines', elements: lines, outer: undefined, inside: new Map() };
  const { byKey, all } = findLists(bytes);
  const text = shellOf(bytes, all);
  let shell: unknown;
  try {
    shell = JSON.parse(textOf(text, encoding));
  } catch (error) {
    return { brokenAt: lineAt(bytes, beforeCut(all, placeOf(error, text.length))) };
  }
  if (Array.isArray(shell)) {
    const elements = fromBytes(bytes, byKey.get('') ?? places, encoding);
    return { form: 'array', elements, outer: undefined, inside: new Map() };
  }
  const inside = new Map([...byKey].map(([key, list]) => [key, fromBytes(bytes, list, encoding)] as const));
  const one = { count: 1, line: () => 1, value: (): unknown => JSON.parse(textOf(bytes, encoding)) };
  return { form: 'object', elements: one, outer: objectIn(shell), inside };
}

/** The text without the elements of its outer lists; whole and elements are JSON just when this and they are. */
function shellOf(bytes: Uint8Array, lists: Places[]): Uint8Array {
  let cut = 0;
  for (const { count, from, to } of lists) for (let i = 0; i < count; i++) cut += to[i]! - from[i]! - 1;
  const shell = new Uint8Array(bytes.length - cut);
  let length = 0;
  let at = 0;
  for (const { count, from, to } of lists) {
    for (let i = 0; i < count; i++) {
      shell.set(bytes.subarray(at, from[i]!), length);
      length += from[i]! - at;
      shell[length++] = 0x30;
      at = to[i]!;
    }
  }
  shell.set(bytes.subarray(at), length);
  return shell;
}

/** Whether half of the lines could be a JSON text each, by their first and last letter. */
function holdTexts(bytes: Uint8Array, { count, from, to }: Places): boolean {
  let good = 0;
  for (let i = 0; i < count; i++) {
    let first = from[i]!;
    let last = to[i]! - 1;
    while (bytes[first]! <= 0x20) first++;
    while (bytes[last]! <= 0x20) last--;
    if ((bytes[first] === 0x7b && bytes[last] === 0x7d) || (bytes[first] === 0x5b && bytes[last] === 0x5d)) good++;
  }
  return good * 2 >= count && count > 0;
}

function isText(lines: Elements, i: number): boolean {
  try {
    return objectIn(lines.value(i)) !== undefined;
  } catch {
    return false;
  }
}

/** The line of the first element that is broken, or of the place between them. */
function faultOf(bytes: Uint8Array, encoding: ByteText): number {
  const opened = openLarge(bytes, encoding);
  if ('brokenAt' in opened) return opened.brokenAt;
  for (const list of [...opened.inside.values(), opened.elements]) {
    const { brokenAt } = walk(opened, list, () => {});
    if (brokenAt > 0) return brokenAt;
  }
  return 1;
}

/** Where a text is broken, as the engine says it; the end where it does not. */
function placeOf(error: unknown, length: number): number {
  const at = /position (\d+)/.exec(error instanceof Error ? error.message : '');
  return at ? Number(at[1]) : length;
}

/** The place in the whole text of a place in its shell. */
function beforeCut(lists: Places[], place: number): number {
  let more = 0;
  for (const { count, from, to } of lists) {
    for (let i = 0; i < count; i++) {
      if (place + more <= from[i]!) return place + more;
      more += to[i]! - from[i]! - 1;
    }
  }
  return place + more;
}

function lineAt(bytes: Uint8Array, place: number): number {
  let line = 1;
  for (let i = 0; i < place && i < bytes.length; i++) if (bytes[i] === 0x0a) line++;
  return line;
}

import { isUtf8 } from 'node:buffer';

/** A parsed element of a JSON text and the physical line it starts on. */
export interface Element {
  value: unknown;
  line: number;
}

export interface JsonText {
  /** `lines`: one JSON text a line (NDJSON). */
  form: 'array' | 'object' | 'lines';
  /** Elements of the array, the lines, or the one object. */
  elements: Element[];
  /** Lines of NDJSON that could not be parsed. */
  broken: number[];
  /** Lines on which the elements of each list directly inside the one object start, by key. */
  inside: Map<string, number[]>;
}

/** JSON as UTF-8 (RFC 8259; a byte-order mark is let pass), or one JSON text a line. Undefined when it is neither. */
export function openJson(source: Uint8Array): JsonText | { brokenAt: number } {
  const marked = source[0] === 0xef && source[1] === 0xbb && source[2] === 0xbf;
  const bytes = marked ? source.subarray(3) : source;
  const encoding = isUtf8(bytes) ? 'utf8' : 'latin1';
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString(encoding);
  const lines = childLines(bytes);
  try {
    const value: unknown = JSON.parse(text);
    if (Array.isArray(value)) {
      const at = lines.get('') ?? [];
      return {
        form: 'array',
        elements: value.map((element: unknown, i) => ({ value: element, line: at[i] ?? 1 })),
        broken: [],
        inside: lines,
      };
    }
    return { form: 'object', elements: [{ value, line: 1 }], broken: [], inside: lines };
  } catch (error) {
    return ndjson(text) ?? { brokenAt: lineOfFault(text, error) };
  }
}

/** Every line a JSON text of its own. At least half of them must be, or the text is no NDJSON but broken JSON. */
function ndjson(text: string): JsonText | undefined {
  const elements: Element[] = [];
  const broken: number[] = [];
  text.split(/\r\n|\n|\r/).forEach((row, i) => {
    if (row.trim() === '') return;
    try {
      const value: unknown = JSON.parse(row);
      if (typeof value !== 'object' || value === null) broken.push(i + 1);
      else elements.push({ value, line: i + 1 });
    } catch {
      broken.push(i + 1);
    }
  });
  if (elements.length === 0 || broken.length > elements.length) return undefined;
  return { form: 'lines', elements, broken, inside: new Map() };
}

function lineOfFault(text: string, error: unknown): number {
  const at = /position (\d+)/.exec(error instanceof Error ? error.message : '');
  const end = at ? Number(at[1]) : text.length;
  let line = 1;
  for (let i = 0; i < end && i < text.length; i++) if (text.charCodeAt(i) === 10) line++;
  return line;
}

/** Lines on which elements start: of the outermost array under '', of arrays directly in the outermost object by key. */
function childLines(bytes: Uint8Array): Map<string, number[]> {
  const found = new Map<string, number[]>();
  let depth = 0;
  let line = 1;
  let collecting: number[] | undefined;
  let collectDepth = 0;
  let expecting = false;
  let key = '';
  let stringFrom = -1;
  for (let i = 0; i < bytes.length; i++) {
    const b = bytes[i]!;
    if (b === 0x0a) {
      line++;
      continue;
    }
    if (stringFrom >= 0) {
      if (b === 0x5c) i++;
      else if (b === 0x22) {
        if (depth === 1 && i - stringFrom < 60) key = Buffer.from(bytes.subarray(stringFrom, i)).toString('utf8');
        stringFrom = -1;
      }
      continue;
    }
    if (b <= 0x20) continue;
    if (expecting && collecting && depth === collectDepth && b !== 0x5d) {
      collecting.push(line);
      expecting = false;
    }
    if (b === 0x22) stringFrom = i + 1;
    else if (b === 0x7b || b === 0x5b) {
      depth++;
      if (b === 0x5b && ((depth === 1 && found.size === 0) || (depth === 2 && !collecting))) {
        collecting = [];
        collectDepth = depth;
        expecting = true;
        found.set(depth === 1 ? '' : key, collecting);
      }
    } else if (b === 0x7d || b === 0x5d) {
      if (b === 0x5d && depth === collectDepth) {
        collecting = undefined;
        collectDepth = 0;
      }
      depth--;
    } else if (b === 0x2c && depth === collectDepth) expecting = true;
  }
  return found;
}

export type Json = Record<string, unknown>;

/** A field's value only if it has the wanted type; hostile files put anything anywhere. */
export function objectIn(value: unknown, key?: string): Json | undefined {
  const found =
    key === undefined ? value : typeof value === 'object' && value !== null ? (value as Json)[key] : undefined;
  return typeof found === 'object' && found !== null && !Array.isArray(found) ? (found as Json) : undefined;
}

export function listIn(value: unknown, key: string): unknown[] {
  const found = objectIn(value)?.[key];
  return Array.isArray(found) ? found : [];
}

export function textIn(value: unknown, key: string): string {
  const found = objectIn(value)?.[key];
  return typeof found === 'string' ? found : '';
}

export function numberIn(value: unknown, key: string): number | undefined {
  const found = objectIn(value)?.[key];
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}

import { type ByteText, textOf } from '../../bytes/text.ts';
import type { Json } from './fields.ts';
import type { Places } from './places.ts';

/** The elements of a list, or the lines of a text. */
export interface Elements {
  count: number;
  /** Physical line on which an element starts. */
  line(i: number): number;
  /** @throws SyntaxError where the text of this element is broken; `walk` meets those first. */
  value(i: number): unknown;
}

export const NO_ELEMENTS: Elements = { count: 0, line: () => 1, value: () => undefined };

export interface JsonText {
  /** `lines`: one JSON text a line (NDJSON). */
  form: 'array' | 'object' | 'lines';
  /** Elements of the array, the lines, or the one object. */
  elements: Elements;
  /** The one object; of a large text its lists hold nothing but their length. */
  outer: Json | undefined;
  /** Elements of each list directly inside the one object, by key. */
  inside: Map<string, Elements>;
}

/**
 * Looks at every element once. A broken line of many is left out and told in `broken`, unless more lines are broken than
 * whole; a broken element of a list breaks the text: `brokenAt` is its line, and whatever was made so far is worth nothing.
 */
export function walk(
  text: JsonText,
  elements: Elements,
  visit: (value: unknown, i: number) => void,
): { brokenAt: number; broken: number[] } {
  const broken: number[] = [];
  const lines = text.form === 'lines';
  for (let i = 0; i < elements.count; i++) {
    let value: unknown;
    try {
      value = elements.value(i);
    } catch {
      if (!lines) return { brokenAt: elements.line(i), broken };
      broken.push(elements.line(i));
      continue;
    }
    if (lines && (typeof value !== 'object' || value === null)) broken.push(elements.line(i));
    else visit(value, i);
  }
  const brokenAt = lines && broken.length * 2 > elements.count ? broken[0]! : 0;
  return { brokenAt: elements.count === 0 && lines ? 1 : brokenAt, broken };
}

/** Values of one list, with the lines where they are known. */
export function inMemory(values: unknown[], places?: Places): Elements {
  const known = places?.count === values.length ? places : undefined;
  return { count: values.length, line: (i) => known?.line[i] ?? 1, value: (i) => values[i] };
}

/** Values that are parsed anew whenever one is asked for. */
export function fromBytes(bytes: Uint8Array, { count, from, to, line }: Places, encoding: ByteText): Elements {
  return {
    count,
    line: (i) => line[i]!,
    value: (i) => JSON.parse(textOf(bytes, encoding, from[i], to[i])),
  };
}

/** One operator of a page with what stood before it. */
export interface Operation {
  operator: string;
  operands: string[];
}

const TOKEN = /\/[^\s/[\]<>()]*|<<|>>|<[0-9a-fA-F\s]*>|\[|\]|\((?:\\.|[^\\()])*\)|[^\s/[\]<>()]+/g;
const OPERAND = /^[/<[\](>+\-.\d]/;

/** Splits a content stream into operations (ISO 32000-1, 7.8.2); enough of the syntax for files without inline images. */
export function operationsOf(content: string): Operation[] {
  const found: Operation[] = [];
  let operands: string[] = [];
  for (const [token] of content.matchAll(TOKEN)) {
    if (OPERAND.test(token) || token === 'true' || token === 'false' || token === 'null') operands.push(token);
    else {
      found.push({ operator: token, operands });
      operands = [];
    }
  }
  return found;
}

/** Operators that put ink on the page (ISO 32000-1, annex A). */
export const PAINTS = new Set(['Tj', 'TJ', "'", '"', 'S', 's', 'f', 'F', 'f*', 'B', 'B*', 'b', 'b*', 'sh', 'Do', 'BI']);

/** Glyph codes of two bytes that a text operator shows. */
export function codesShown({ operands }: Operation): number[] {
  return operands
    .filter((it) => /^<[0-9a-fA-F]/.test(it))
    .flatMap((it) => it.slice(1, -1).match(/.{4}/g) ?? [])
    .map((code) => Number.parseInt(code, 16));
}

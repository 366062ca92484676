import { IntlMessageFormat } from 'intl-messageformat';
import type { Words } from '../../src/language/index.ts';

interface Element {
  type: number;
  value: string;
  offset?: number;
  pluralType?: string;
  options?: Record<string, { value: Element[] }>;
}
const LITERAL = 0;
const PLURAL = 6;
const POUND = 7;

const ACCENTED: Record<string, string> = Object.fromEntries(
  [...'aeiouAEIOUnNcCyszSZ'].map((letter, at) => [letter, [...'áéíóúÁÉÍÓÚñÑçÇýšžŠŽ'][at]!]),
);

/**
 * A text as a language with longer words would have it: letters with accents, and every word longer by 40 %, so that
 * what was cut, overlaps, or never went through the words file shows. Spaces, marks and what is filled in stay.
 */
const stretched = (text: string): string =>
  text.replace(/\p{L}+/gu, (word) => {
    const accented = [...word].map((letter) => ACCENTED[letter] ?? letter).join('');
    const more = Math.round(word.length * 0.4);
    return (
      accented +
      [...word.toLowerCase()]
        .slice(-more || word.length)
        .join('')
        .slice(0, more)
    );
  });

const quoted = (text: string): string => text.replace(/'/g, "''").replace(/[{}#]/g, (sign) => `'${sign}'`);

function written(elements: Element[]): string {
  return elements
    .map((element) => {
      if (element.type === LITERAL) return quoted(stretched(element.value));
      if (element.type === POUND) return '#';
      if (!element.options) return `{${element.value}}`;
      const kind = element.type !== PLURAL ? 'select' : element.pluralType === 'ordinal' ? 'selectordinal' : 'plural';
      const arms = Object.entries(element.options).map(([name, arm]) => `${name} {${written(arm.value)}}`);
      return `{${element.value}, ${kind}, ${arms.join(' ')}}`;
    })
    .join('');
}

/** A whole language made of another one. Texts of one letter, such as the signs of notes, stay as they are. */
export function pseudo(words: Words, path: readonly string[] = []): Words {
  return Object.fromEntries(
    Object.entries(words).map(([name, value]) => {
      if (typeof value === 'object') return [name, pseudo(value, [...path, name])];
      if (path.length === 0 || value.length < 2) return [name, value];
      const ast = new IntlMessageFormat(value, 'en', undefined, { ignoreTag: true }).getAst() as unknown as Element[];
      return [name, written(ast)];
    }),
  );
}

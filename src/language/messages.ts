import { IntlMessageFormat } from 'intl-messageformat';
import { once } from '../once.ts';
import { localeForms } from './locale.ts';
import { unbroken } from './unbroken.ts';

/**
 * What stands in for a parameter: the text printed for `{name}`, and for plural and select arms the number or word
 * that chooses, when it is not the text. Undefined for a name that was not given.
 */
export type Filling = (name: string) => Filled | undefined;

interface Filled {
  text: string;
  choice?: string | number | undefined;
}

/** One language's words, found by dotted key and read only when first needed: most runs speak a part of them. */
export interface Messages {
  has(key: string): boolean;
  /** The message at `key`. Throws an Error naming the key when it is missing or a parameter is not given. */
  fill(key: string, filling: Filling): string;
}

interface Compiled {
  /** `filled` tells what stands for a name, and throws for one that has nothing. */
  format(filled: (name: string) => Filled): string;
  params: Set<string>;
}

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

/** Element kinds of the ICU syntax tree. */
const ARGUMENT = 1;
const OTHER_WITH_NAME = [2, 3, 4, 5, 6];
const PREFIX = 'text ';

/**
 * A parameter may both choose an arm and be printed: `{k, plural, one {…} other {{k} nights}}`. Its printed form is
 * already spoken text, so plain arguments are renamed to look that up and the arms keep the number.
 */
function renamePlain(elements: Element[], params: Set<string>): void {
  for (const element of elements) {
    if (element.type === ARGUMENT) {
      params.add(element.value);
      element.value = PREFIX + element.value;
    } else if (OTHER_WITH_NAME.includes(element.type)) {
      params.add((element as { value: string }).value);
      const options = 'options' in element ? (element.options as Record<string, { value: Element[] }>) : {};
      for (const arm of Object.values(options)) renamePlain(arm.value, params);
    }
  }
}

/** Names of the parameters a message uses, in any of its arms. Throws on a syntax error. */
export function messageParams(text: string, locale: string): Set<string> {
  return compile(text, locale).params;
}

/** The library asks Intl at every message whether it knows the locale, which costs more than reading the message. */
const resolved = once((locale: string) => new Intl.Locale(locale));
IntlMessageFormat.resolveLocale = (locales) => resolved(typeof locales === 'string' ? locales : locales[0]!);

/** A space between a number, or what stands for one, and the sign of its unit. */
const BEFORE_UNIT = /(?<=[\d}]) (?=(?:%|mg\/dL|mmol\/L|min|h|g|IU|\{unit\})(?![\p{L}\d]))/gu;

/** Text and names alone, as in most messages: no arms to choose from, and no quote that would mean something. */
const SIMPLE = /^[^{}']*(?:\{[A-Za-z]\w*\}[^{}']*)*$/;

/** What the library would make of a simple message, without its parser: a fifth of what composing costs. */
function compileSimple(text: string): Compiled {
  // Text at even places, names at odd ones.
  const parts = text.split(/[{}]/);
  const params = new Set(parts.filter((_, i) => i % 2 === 1));
  return {
    params,
    format(filled) {
      let text = '';
      for (let i = 0; i < parts.length; i++) text += i % 2 ? filled(parts[i]!).text : parts[i]!;
      return text;
    },
  };
}

function compile(text: string, locale: string, formatters: object = {}): Compiled {
  // A line never ends between a number and its unit.
  const bound = text.replace(BEFORE_UNIT, '\u00a0');
  if (SIMPLE.test(bound)) return compileSimple(bound);
  const message = new IntlMessageFormat(bound, locale, undefined, { ignoreTag: true, ...formatters });
  const params = new Set<string>();
  renamePlain(message.getAst(), params);
  const names = [...params].map((name) => ({ name, plain: PREFIX + name }));
  return {
    params,
    format(filled) {
      const values: Record<string, string | number> = {};
      for (const { name, plain } of names) {
        const { text, choice } = filled(name);
        values[name] = choice ?? text;
        values[plain] = text;
      }
      return message.format(values) as string;
    },
  };
}

/** One set of formatters for all messages: each message would otherwise build its own. Which plural a number takes is the engine's to say. */
function sharedFormatters(): object {
  const plurals = once((options: string) => new Intl.PluralRules(...(JSON.parse(options) as [string])));
  const forms = once(localeForms);
  return {
    formatters: {
      getPluralRules: (...options: unknown[]) => plurals(JSON.stringify(options)),
      getNumberFormat: (locale: string) => ({ format: (value: number) => forms(locale).number(value, 0, 3) }),
    },
  };
}

export function openMessages(words: object, language: string, locale: string): Messages {
  const compiled = new Map<string, Compiled>();
  const formatters = sharedFormatters();

  const find = (key: string): string | undefined => {
    let at: unknown = words;
    for (const step of key.split('.')) {
      if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
      at = (at as Record<string, unknown>)[step];
    }
    return typeof at === 'string' ? at : undefined;
  };

  const [units, outOf] = [find('units.unbroken'), find('units.outOf')];
  const bound = units === undefined || outOf === undefined ? (text: string) => text : unbroken({ units, outOf });

  return {
    has: (key) => find(key) !== undefined,
    fill(key, filling) {
      let message = compiled.get(key);
      if (!message) {
        const text = find(key);
        if (text === undefined) throw new Error(`No words for "${key}" in language "${language}".`);
        try {
          message = compile(text, locale, formatters);
        } catch (error) {
          throw new Error(`The words "${key}" (${language}) are not a well-formed message.`, { cause: error });
        }
        compiled.set(key, message);
      }
      // Empty arms leave their spaces behind, and an abbreviation's stop at the end of a sentence is its full stop too.
      const spoken = message.format((name) => {
        const filled = filling(name);
        if (!filled) throw new Error(`The words "${key}" (${language}) need a value for {${name}}.`);
        return filled;
      });
      const text = (spoken.includes('  ') ? spoken.replace(/ {2,}/g, ' ') : spoken).trim();
      return bound(text.includes('..') ? text.replace(/(?<=\p{L}\.)\.(?= |$)/gu, '') : text);
    },
  };
}

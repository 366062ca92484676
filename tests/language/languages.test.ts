import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, test } from 'vitest';
import { lacking, layered, messageParams, placeOf, REGIONS, speakerOf, type Words } from '../../src/language/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { english } from '../support/english.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { home, wordsOf } from '../support/story.ts';

const folder = join(home, 'templates/words');
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.json') && name !== 'locked.json')
  .map((name) => name.slice(0, -'.json'.length));
/** A file with a region is laid over the file of its language. */
const languages = files.filter((name) => !name.includes('-'));
const overlays = files.filter((name) => name.includes('-'));
const texts = new Map(everyMessage(english));

interface Element {
  type: number;
  options?: Record<string, { value: Element[] }>;
}
const PLURAL = 6;

/** The arms of every plural of a message, in any depth. */
function plurals(elements: Element[]): string[][] {
  return elements.flatMap((element) => {
    const arms = Object.entries(element.options ?? {});
    const below = arms.flatMap(([, arm]) => plurals(arm.value));
    return element.type === PLURAL ? [arms.map(([name]) => name), ...below] : below;
  });
}

/** What a translation of `key` gets wrong beside the English text. */
function slips(key: string, text: string, locale: string): string[] {
  const model = texts.get(key);
  if (model === undefined) return [`${key}: there is no such text in English`];
  const names = (message: string) => [...messageParams(message, locale)].sort().join(', ');
  const found = names(text) === names(model) ? [] : [`${key}: takes {${names(text)}} and not {${names(model)}}`];
  // Unicode CLDR names the plural categories of a language; the runtime carries them.
  const known = new Intl.PluralRules(locale).resolvedOptions().pluralCategories as string[];
  const ast = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true }).getAst() as unknown as Element[];
  for (const arms of plurals(ast)) {
    const foreign = arms.filter((arm) => !arm.startsWith('=') && !known.includes(arm));
    if (foreign.length > 0) found.push(`${key}: "${foreign.join(', ')}" is no plural of ${locale}`);
    if (!arms.includes('other')) found.push(`${key}: a plural without "other"`);
  }
  return found;
}

describe.each(languages)('%s', (language) => {
  const words = wordsOf(language) as Words;

  test('has every text of the papers', () => {
    expect(lacking(words, english)).toEqual([]);
  });

  test('takes the parameters of the English texts and the plurals of its own', () => {
    expect(everyMessage(words).flatMap(([key, text]) => slips(key, text, words.locale as string))).toEqual([]);
  });

  test('speaks the same units and signs: one letter for each kind of note', () => {
    const notes = Object.values(words.notes as Words).map((kind) => (kind as Words).letter);
    expect(new Set(notes).size).toBe(notes.length);
    for (const letter of notes) expect(letter).toMatch(/^\p{Lu}$/u);
  });
});

describe.each(overlays)('%s', (name) => {
  const over = wordsOf(name) as Words;
  const base = new Map(everyMessage(wordsOf(name.slice(0, 2)) as Words));

  test('holds only texts that differ from those of its language', () => {
    expect(everyMessage(over).filter(([key, text]) => base.get(key) === text || !base.has(key))).toEqual([]);
    expect(everyMessage(over).flatMap(([key, text]) => slips(key, text, name))).toEqual([]);
  });
});

test('a language that lacks a text is refused by the names of what it lacks', () => {
  const model = { a: { b: 'x', c: 'y' }, d: 'z' };
  expect(lacking({ a: { b: '1' }, d: '2' }, model)).toEqual(['a.c']);
  expect(lacking({ a: 'not a section' }, model)).toEqual(['a.b', 'a.c', 'd']);
  // What only the command says may stay in its language.
  expect(lacking({}, { cli: { help: 'h' }, issues: { 'settings-not-json': 's' } })).toEqual([]);
});

test('what is laid over a language changes its texts and nothing else', () => {
  const base = { a: { b: 'x', c: 'y' }, d: 'z' };
  expect(layered(base, { a: { c: 'w' }, e: 'v' })).toEqual({ a: { b: 'x', c: 'w' }, d: 'z', e: 'v' });
  expect(base.a.c).toBe('y');
});

describe('places', () => {
  /** Paper and forms by country: Unicode CLDR, from memory. */
  test.each([
    [undefined, undefined, 'en', undefined, undefined, 'a4'],
    ['es', undefined, 'es', undefined, undefined, 'a4'],
    [undefined, 'es-MX', 'es', 'es-MX', undefined, 'letter'],
    [undefined, 'es-ES', 'es', 'es-ES', 'es-ES', 'a4'],
    ['es', 'US', 'es', 'es-US', undefined, 'letter'],
    ['es', 'AR', 'es', 'es-AR', 'es-ES', 'a4'],
    [undefined, 'US', 'en', 'en-US', undefined, 'letter'],
    [undefined, 'en-GB', 'en', 'en-GB', 'en-GB', 'a4'],
    ['en', 'NZ', 'en', 'en-NZ', 'en-GB', 'a4'],
    ['en', 'CA', 'en', 'en-CA', undefined, 'letter'],
  ] as const)('%s in %s', (language, region, spoken, locale, over, paper) => {
    const expected = { language: spoken, paper, ...(locale ? { locale } : {}), ...(over ? { over } : {}) };
    expect(placeOf(language, region)).toEqual(expected);
  });

  test.each([
    ['es', 'en-GB'],
    ['en', 'MX'],
    [undefined, 'mx'],
    [undefined, 'es_MX'],
    [undefined, 'fr-FR'],
    [undefined, ''],
  ] as const)('%s in %s is none', (language, region) => {
    expect(placeOf(language, region)).toBeNull();
  });

  test('every region can be asked for, and its forms are known to the runtime', () => {
    for (const region of REGIONS) {
      expect(placeOf(undefined, region)?.locale).toBe(region);
      expect(Intl.DateTimeFormat.supportedLocalesOf([region])).toEqual([region]);
    }
  });
});

/** Forms as the Unicode CLDR gives them; spaces that do not break are told as spaces. */
describe('Spanish forms by region', () => {
  const say = (locale: string) => {
    const speaker = speakerOf(
      { ...(wordsOf('es') as Words), locale },
      { unit: 'mg/dL', voice: 'patient', targets: targetSets.adult },
    );
    return {
      clock: (value: number) => speaker.value({ q: 'clock', value }).replaceAll('\u00a0', ' '),
      inText: (value: number) =>
        speaker
          .say('pages.everyLow.when', { date: { q: 'word', value: 'ayer' }, clock: { q: 'clock', value } })
          .replaceAll('\u00a0', ' '),
      date: speaker.value({ q: 'date', value: '2026-06-04' as never }),
      number: speaker.number(1234.5, 1),
    };
  };

  test.each([
    ['es-MX', '2:40 a.m.', 'jueves, 4 de junio', '1,234.5'],
    ['es-ES', '02:40', 'jueves, 4 de junio', '1234,5'],
    ['es-US', '2:40 a.m.', 'jueves, 4 de junio', '1,234.5'],
  ])('%s', (locale, clock, date, number) => {
    const said = say(locale);
    expect([said.clock(160), said.date, said.number]).toEqual([clock, date, number]);
    expect([said.clock(0), said.clock(720)]).toEqual(['medianoche', 'mediodía']);
  });

  test('a time in a sentence has its article', () => {
    expect(say('es-MX').inText(60)).toBe('ayer, a la 1 a.m.');
    expect(say('es-MX').inText(800)).toBe('ayer, a la 1:20 p.m.');
    expect(say('es-MX').inText(160)).toBe('ayer, a las 2:40 a.m.');
    expect(say('es-ES').inText(800)).toBe('ayer, a las 13:20');
    expect(say('es-ES').inText(0)).toBe('ayer, a las 12 de la noche');
  });
});

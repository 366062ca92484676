import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { JSDOM } from 'jsdom';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { gather } from '../../src/cli/gather.ts';
import { settle } from '../../src/cli/settings.ts';
import { compose } from '../../src/compose.ts';
import type { CompiledTemplate } from '../../src/writers/html/index.ts';
import { english } from '../support/english.ts';
import { everyMessage, readings } from '../support/everyMessage.ts';
import { home, stories, wordsOf } from '../support/story.ts';
import { ownTemplate, webPage } from '../support/webPage.ts';

/**
 * A page of one language holds words of that language alone. Every word on every Spanish page of every story has to
 * stand in the Spanish words file, be a date, a citation, or come from the person's own files: an English text that
 * was never translated has nowhere to hide.
 */
const LETTERS = /\p{L}+/gu;
const wordsIn = (text: string): string[] => (text.match(LETTERS) ?? []).map((one) => one.toLowerCase());

/** Read as messages, so that the names of parameters and arms are no words. */
const spanish = new Set(everyMessage(wordsOf('es') as object).flatMap(([, text]) => readings(text).flatMap(wordsIn)));

/** Names of months and days, as the runtime forms them. */
const dates = new Set(
  (['long', 'short', 'narrow'] as const).flatMap((style) => {
    const forms = new Intl.DateTimeFormat('es-419', { month: style, weekday: style, day: 'numeric' });
    return Array.from({ length: 366 }, (_, day) => forms.format(new Date(2024, 0, 1 + day))).flatMap(wordsIn);
  }),
);

/** Units, codes of files, and the name of the program with its version in these tests. */
const SIGNS = new Set(
  'daybands golden mg dl mmol mol l kg min h g d wk ui utf windows le am pm a p m doi analysis json templates medicines'.split(
    ' ',
  ),
);

/** Author, year, journal, volume and pages; a doi; an international standard; a place on the web. */
const CITATION = [
  /\p{Lu}[\p{L} ]+ \d{4};\d+(?:\(Suppl \d+\))?:\d+-\p{L}*\d*/gu,
  /\p{Lu}[\p{L}&]*(?: (?:& )?\p{Lu}\p{L}*)* \d{4}(?:, [\p{L} ]+\d+:\d+(?:-\d+)?)?/gu,
  /\bdoi \S+/g,
  /\bISO \d+/g,
  /\bngsp\.org\b/g,
  /\b(?=[0-9a-f]*\d)[0-9a-f]{12}\b/g,
];

/** What a person and a clinic wrote themselves: cells of the files, values of the settings; the longest first. */
function ownTexts(story: string, { measures }: Analysis): string[] {
  const { inputs, settingsPath } = gather([join(home, 'sample-data', story)]);
  const cells = inputs.flatMap(({ name, bytes }) => {
    const charsets = bytes[0] === 0xff ? ['utf-16le'] : ['utf-8', 'windows-1252'];
    const lines = charsets.flatMap((charset) => new TextDecoder(charset).decode(bytes).split(/[\r\n]+/));
    return [name, ...lines.flatMap((line) => [line, ...line.split(/[\t;,"]+/), ...line.split(/[\t;"]+/)])];
  });
  const settings = Object.values(JSON.parse(readFileSync(settingsPath!, 'utf8')) as Record<string, unknown>);
  // Foods are told in small letters and without their amounts, and measures hold no words but theirs.
  const foods: string[] = [];
  JSON.stringify(measures, (_, value: unknown) => {
    if (typeof value === 'string') foods.push(value);
    return value;
  });
  const texts = [...cells, ...settings.map(String), ...foods.filter((one) => one.includes(' '))].flatMap((text) => [
    text.trim(),
    text.trim().toLowerCase(),
  ]);
  const all = new Set(texts.filter((text) => /\p{L}/u.test(text)));
  return [...all].sort((a, b) => b.length - a.length);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Takes away what is nobody's language: own texts, also where one is cut short with `…`, citations, signs. */
function stripper(own: readonly string[]): (text: string) => string {
  const whole = new Set(own);
  const ownWords = new RegExp(`(?<![\\p{L}\\d])(?:${own.map(escaped).join('|')})(?![\\p{L}\\d])`, 'gu');
  const isStart = (text: string): boolean => own.some((one) => one.startsWith(text));
  return (text) => {
    const plain = text.replace(/[\u2066\u2069\u00ad]/g, '').trim();
    if (whole.has(plain) || (plain.endsWith('…') && isStart(plain.slice(0, -1).trim()))) return '';
    return CITATION.reduce((left, form) => left.replace(form, ' '), plain).replace(ownWords, ' ');
  };
}

/** Every text of a page that is read or read aloud. */
function textsOf(html: string): string[] {
  const { document } = new JSDOM(html).window;
  for (const node of document.querySelectorAll('style, script, meta')) node.remove();
  const found: string[] = [document.title];
  const walker = document.createTreeWalker(document, 5);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (node.nodeType === 3) found.push(node.nodeValue ?? '');
    else for (const name of ['aria-label', 'title', 'alt']) found.push((node as Element).getAttribute(name) ?? '');
  }
  return found;
}

async function fullAnalysis(story: string): Promise<Analysis> {
  const { inputs, settingsPath } = gather([join(home, 'sample-data', story)]);
  const asked = { moreIndices: true, inferMeals: true, compare: 'previous', a1c: '7.1' };
  const wanted = await settle(asked, settingsPath, '2026-01-01');
  if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
  const analysis = analyse(inputs, wanted.settings, 'golden');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
}

let template: CompiledTemplate;
beforeAll(async () => {
  template = await ownTemplate();
});

const englishWords = new Set(everyMessage(english as object).flatMap(([, text]) => wordsIn(text)));

describe.each(stories)('%s', (story) => {
  /** What both papers are looked at with. */
  let shared: { analysis: Analysis; ownWords: Set<string>; strip: ReturnType<typeof stripper> };
  beforeAll(async () => {
    const analysis = await fullAnalysis(story);
    const own = ownTexts(story, analysis);
    // A word of the person's may stand by itself (a food out of a list), unless our English says it too.
    const ownWords = new Set(own.flatMap(wordsIn).filter((one) => !englishWords.has(one)));
    shared = { analysis, ownWords, strip: stripper(own) };
  });
  test.each(['clinic', 'patient'] as const)('the %s paper holds no word that is not Spanish', async (voice) => {
    const { analysis, ownWords, strip } = shared;
    const words = wordsOf('es');
    const report = compose(analysis, words, { voice, paper: 'a4', whole: wordsOf() });
    // A text that stands on it twice, as a food in a table does, is looked at once, and figures alone not at all.
    const texts = new Set(textsOf(webPage(report, template, { words })).filter((text) => /\p{L}/u.test(text)));
    const foreign = [...texts].flatMap((text) => {
      const left = wordsIn(strip(text)).filter(
        (one) => !spanish.has(one) && !dates.has(one) && !SIGNS.has(one) && !ownWords.has(one),
      );
      return left.length > 0 ? [`${left.join(', ')} in "${text.trim()}"`] : [];
    });
    expect([...new Set(foreign)]).toEqual([]);
  });
});

/** Common English words that no Spanish text has; those that are both (no, a, he, has, son, sin, once) are left out. */
const ENGLISH =
  'the of and from with to by for is are was were this that these those it its at on an or not be been than which when where what how each between'.split(
    ' ',
  );

test('no text of the Spanish words file holds a common English word', () => {
  const found = everyMessage(wordsOf('es') as object).flatMap(([key, text]) =>
    readings(text).flatMap((each) =>
      wordsIn(each)
        .filter((one) => ENGLISH.includes(one))
        .map((one) => `${key}: ${one}`),
    ),
  );
  expect([...new Set(found)]).toEqual([]);
});

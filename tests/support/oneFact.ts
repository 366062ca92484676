import type { Analysis } from '../../src/analyse.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Block, Report } from '../../src/model/report.ts';

/** A piece of a side that tells something: running text, the first column of a table, or what is written in a picture. */
interface Telling {
  page: string;
  kind: 'text' | 'rows' | 'picture';
  text: string;
}

function tellings(report: Report): Telling[] {
  const of = (page: string, block: Block): Telling[] => {
    const all = (some: readonly Block[]): Telling[] => some.flatMap((one) => of(page, one));
    switch (block.kind) {
      case 'paragraph':
        return [{ page, kind: 'text', text: block.text }];
      case 'list':
        return block.items.map((text) => ({ page, kind: 'text', text }));
      case 'table':
        return [{ page, kind: 'rows', text: block.rows.map((row) => row[0]?.text ?? '').join(', ') }];
      case 'chart':
        return block.drawing.marks.flatMap((mark): Telling[] =>
          mark.kind === 'text' ? [{ page, kind: 'picture', text: mark.text }] : [],
        );
      case 'columns':
        return block.columns.flatMap(all);
      case 'panel':
      case 'together':
        return all(block.blocks);
      case 'fit':
        return all(block.forms[0]!());
      default:
        return [];
    }
  };
  return report.pages.flatMap(({ id, blocks }) => blocks.flatMap((block) => of(id, block)));
}

const LEAST_SENTENCE = 40;
const sentencesOf = (text: string): string[] =>
  text
    .replaceAll('\u00a0', ' ')
    .split(/(?<=[.?!]) (?=\p{Lu}|\d)/u)
    .filter((sentence) => sentence.length > LEAST_SENTENCE);

const allSentences = (all: readonly Telling[]): string[] =>
  all.filter(({ kind }) => kind === 'text').flatMap(({ text }) => sentencesOf(text));

/** Sentences that stand twice. */
function sentencesTwice(all: readonly Telling[]): string[] {
  const said = allSentences(all);
  return said.filter((sentence, i) => said.indexOf(sentence) !== i);
}

/** Lowest and length beside the bars of page 1. */
const lowsOf = (all: readonly Telling[]): Set<string> =>
  new Set(
    all.flatMap(({ page, kind, text }) =>
      page === 'overview' && kind === 'picture' && /^≤?[\d.,]+ · \d/.test(text) ? [text] : [],
    ),
  );

/** How deep and how long a low was, told anywhere but beside its bar on page 1. */
function lowsElsewhere(all: readonly Telling[]): string[] {
  const labels = lowsOf(all);
  return all
    .filter(({ page, kind }) => page !== 'overview' || kind !== 'picture')
    .flatMap(({ page, text }) =>
      [...labels].filter((label) => text.includes(label)).map((label) => `${page}: ${label}`),
    );
}

/** Lists of two days and more, as days, in each telling. */
function dateLists(analysis: Analysis, words: unknown, all: readonly Telling[]) {
  const { timeline, targets } = analysis;
  const speaker = speakerOf(words, { unit: timeline.unit, voice: 'clinic', targets });
  const forms = timeline.days
    .flatMap(({ date }) =>
      (['compact', 'plain', 'short', 'long', 'brief', 'dated'] as const).map((style) => ({
        date,
        text: speaker.value({ q: 'date', value: date }, style).replaceAll('\u00a0', ' '),
      })),
    )
    .sort((a, b) => b.text.length - a.text.length);
  return all.flatMap((telling) => {
    // Each date in place of its words, so that a list is what only commas, "and" and the like part.
    let text = telling.text.replaceAll('\u00a0', ' ');
    for (const form of forms)
      text = text.replaceAll(new RegExp(`(?<![\\d⟨-])${form.text}(?!\\d)`, 'g'), `⟨${form.date}⟩`);
    const lists = text.match(/⟨[\d-]+⟩(?:[,;]? ?(?:and |y )?⟨[\d-]+⟩)+/g) ?? [];
    return lists.map((list) => ({
      ...telling,
      days: [...list.matchAll(/⟨([\d-]+)⟩/g)].map(([, day]) => day as LocalDate),
    }));
  });
}

/**
 * Two days and more that are told together again: in a second sentence, or in the rows of more than one table. A list of page 1 may
 * come back once as the rows of what the topic rests on.
 */
function datesTwice(analysis: Analysis, words: unknown, all: readonly Telling[]): string[] {
  const lists = dateLists(analysis, words, all).filter(({ kind }) => kind !== 'picture');
  return lists.flatMap((a, i) =>
    lists.slice(i + 1).flatMap((b) => {
      const both = a.days.filter((day) => b.days.includes(day));
      return both.length < 2 || a.kind !== b.kind ? [] : [`${both.join(' ')} on ${a.page} and ${b.page}`];
    }),
  );
}

/** Amounts with a unit that two texts tell; those of rules may. */
function numbersTwice(all: readonly Telling[], rules: readonly string[]): string[] {
  const tellers = new Map<string, Set<string>>();
  for (const { page, kind, text } of all) {
    if (kind !== 'text') continue;
    for (const [found] of text
      .replaceAll('\u00a0', ' ')
      .matchAll(/\d[\d.,]* h(?: \d+ min)?|\d[\d.,]* min\b|\d[\d.,]* (?:%|mg\/dL|mmol\/L)/g))
      if (!rules.includes(found)) tellers.set(found, new Set([...(tellers.get(found) ?? []), `${page}: ${text}`]));
  }
  return [...tellers].flatMap(([number, where]) => (where.size < 2 ? [] : [`${number} in ${[...where].join(' | ')}`]));
}

export interface Count {
  sentences: string[];
  lows: string[];
  days: string[];
  amounts: string[];
  /** How many were looked at. */
  counted: { sentences: number; lows: number };
}

/** What the sides of a report, in the form in which each block is printed, tell more than once. */
export function repeated(analysis: Analysis, words: unknown, report: Report): Count {
  const all = tellings(report);
  const { timeline, targets } = analysis;
  const { coverage } = analysis.measures;
  const speaker = speakerOf(words, { unit: timeline.unit, voice: 'clinic', targets });
  const limits = (['very-low', 'low', 'high', 'very-high'] as const).flatMap((of) =>
    of === 'very-high' && targets.limits[timeline.unit].veryHigh === null ? [] : [speaker.value({ q: 'limit', of })],
  );
  const goal = (value: number) => speaker.value({ q: 'share', value });
  // Limits and the usual share of readings belong to each sentence that rests on them, and "none seen" never stands without its hours.
  const rules = [
    ...limits,
    goal(0.7),
    ...(coverage.ok ? [speaker.value({ q: 'minutes', value: coverage.value.hours * 60 })] : []),
    speaker.value({ q: 'minutes', value: timeline.interval }),
  ].map((text) => text.replaceAll('\u00a0', ' '));
  return {
    sentences: sentencesTwice(all),
    lows: lowsElsewhere(all),
    days: datesTwice(analysis, words, all),
    amounts: numbersTwice(all, rules),
    counted: { sentences: allSentences(all).length, lows: lowsOf(all).size },
  };
}

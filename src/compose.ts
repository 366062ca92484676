import type { Analysis } from './analyse.ts';
import { isolated, lacking, speakerOf } from './language/index.ts';
import type { LocalDate } from './model/glucose.ts';
import type { Report } from './model/report.ts';
import type { Readings } from './model/timeline.ts';
import type { Agreed } from './model/visits.ts';
import {
  interpretationSentences,
  methodPage,
  type PageContext,
  type PaperOf,
  pagesOf,
  type TopicChoice,
  topicChoices,
} from './pages/index.ts';
import { targetSets } from './targets/index.ts';

export interface ComposeOptions {
  voice: 'clinic' | 'patient';
  paper: 'a4' | 'letter';
  /** Of the clinic's voice: what a visit needs (the usual), all the rest, or the draft interpretation alone. */
  part?: 'visit' | 'further' | 'draft';
  /** Large print of the patient paper; the clinic report has one size. */
  large?: boolean | undefined;
  /** What was typed in at this visit: it stands on the papers, and in no number. */
  written?: Agreed | null | undefined;
  /** Words known to be whole, such as the English ones: a language that lacks a text of theirs is refused. */
  whole?: unknown;
}

/** A language that has no words for a part of the papers: half a translation is worse than none. */
export class HalfTranslated extends Error {
  readonly language: string;
  readonly missing: readonly string[];

  constructor(language: string, missing: readonly string[]) {
    super(`The words of "${language}" lack ${missing.join(', ')}.`);
    this.name = 'HalfTranslated';
    this.language = language;
    this.missing = missing;
  }
}

/** Text of charts in points, where it is read at arm's length, at a table, and by those who see little. */
const CHART_TEXT = { clinic: 8.5, patient: 12, large: 17 };

/**
 * Tells an analysis in one language as one of the two papers. `words` is the parsed content of a words file.
 * @throws HalfTranslated with all keys that are missing, when `whole` words are given to compare with.
 */
export function compose(
  analysis: Analysis,
  words: unknown,
  { voice, paper, part = 'visit', large = false, written = null, whole }: ComposeOptions,
): Report {
  const which: PaperOf = voice === 'clinic' && part !== 'visit' ? part : voice;
  const size = voice === 'patient' && large ? 'large' : voice;
  const context = contextOf(analysis, words, { voice, size, written });
  const { speaker } = context;
  const { timeline, settings } = analysis;
  const { unit } = timeline;
  const missing = whole === undefined || whole === words ? [] : lacking(words, whole);
  if (missing.length > 0) throw new HalfTranslated(speaker.language, missing);
  const { name, code, clinic } = settings.person;
  const sameYear = timeline.from.slice(0, 4) === timeline.to.slice(0, 4);
  const word = (value: string) => ({ q: 'word' as const, value });
  const days = speaker.say('pages.paper.days', {
    from: word(speaker.value({ q: 'date', value: timeline.from }, sameYear ? 'compact' : 'brief')),
    to: word(speaker.value({ q: 'date', value: timeline.to }, 'brief')),
  });
  const title = speaker.say(`pages.paper.${which}.title`);
  const whose = code ?? name;
  const who = [name, code].flatMap((one) => (one ? isolated(one) : [])).join(' · ');
  return {
    language: speaker.language,
    direction: speaker.direction,
    paper,
    voice,
    ...(size === 'large' ? { large } : {}),
    title,
    tab: [...(whose ? [isolated(whose)] : []), days, title].join(' · '),
    header: {
      left: who === '' ? speaker.say('pages.paper.nobody') : who,
      right: [...(clinic ? [isolated(clinic)] : []), title].join(' · '),
    },
    footer: {
      left: speaker.say('pages.paper.footer', {
        days: word(days),
        unit: word(unit),
        printed: word(speaker.value({ q: 'date', value: settings.today as LocalDate }, 'brief')),
        version: word(analysis.version),
        hash: word(analysis.hash),
      }),
      right: speaker.say('pages.paper.pageOf', { page: word('{page}'), pages: word('{pages}') }),
    },
    pages: pagesOf(which, context).flatMap((make) => make(context) ?? []),
    printed: settings.today,
  };
}

function contextOf(
  analysis: Analysis,
  words: unknown,
  { voice, size, written }: { voice: 'clinic' | 'patient'; size: keyof typeof CHART_TEXT; written: Agreed | null },
): PageContext {
  const { timeline, targets } = analysis;
  const { unit } = timeline;
  const speaker = speakerOf(words, { unit, voice, targets, unnamed: unnamedLimits(timeline.readings) });
  return {
    analysis,
    speaker,
    written,
    chart: { speaker, targets, native: timeline.unit, text: CHART_TEXT[size] },
  };
}

/** What whoever leads a visit chooses from and edits: the topics that were found, and the sentences of the draft. */
export function visitChoices(analysis: Analysis, words: unknown): { topics: TopicChoice[]; draft: string[] } {
  const context = contextOf(analysis, words, { voice: 'clinic', size: 'clinic', written: null });
  return { topics: topicChoices(context), draft: interpretationSentences(context) };
}

export interface MethodOptions {
  paper: 'a4' | 'letter';
  /** Date of printing, YYYY-MM-DD. */
  printed: string;
  version: string;
  clinic?: string | undefined;
}

/** How each number is made, for a clinic to print once: nothing in it is about a person. */
export function composeMethod(words: unknown, { paper, printed, version, clinic }: MethodOptions): Report {
  // Its words hold no glucose: unit and targets are never asked for.
  const speaker = speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult });
  const word = (value: string) => ({ q: 'word' as const, value });
  const page = methodPage(speaker);
  return {
    language: speaker.language,
    direction: speaker.direction,
    paper,
    voice: 'clinic',
    title: page.title,
    tab: page.title,
    header: { left: clinic === undefined ? '' : isolated(clinic), right: page.title },
    footer: {
      left: speaker.say('pages.paper.methodFooter', {
        printed: word(speaker.value({ q: 'date', value: printed as LocalDate }, 'brief')),
        version: word(version),
      }),
      right: speaker.say('pages.paper.pageOf', { page: word('{page}'), pages: word('{pages}') }),
    },
    pages: [page],
    printed,
  };
}

/** Files that say only "low" or "high" name no limit: then none is printed. */
function unnamedLimits({ count, limit, mgdl }: Readings): { below: boolean; above: boolean } {
  const seen = { below: false, above: false };
  const named = { below: false, above: false };
  for (let i = 0; i < count; i++) {
    if (limit[i] === 0) continue;
    const side = limit[i]! < 0 ? 'below' : 'above';
    seen[side] = true;
    if (!Number.isNaN(mgdl[i]!)) named[side] = true;
  }
  return { below: seen.below && !named.below, above: seen.above && !named.above };
}

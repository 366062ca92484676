import type { Analysis } from './analyse.ts';
import { dayNames, isolated, lacking, speakerOf } from './language/index.ts';
import type { LocalDate } from './model/glucose.ts';
import type { Report } from './model/report.ts';
import type { Agreed } from './model/visits.ts';
import {
  contextOf,
  interpretationSentences,
  methodPage,
  oneDay,
  type PageContext,
  type PaperOf,
  pagesOf,
  remarksApart,
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
  const missing = whole === undefined || whole === words ? [] : lacking(words, whole);
  if (missing.length > 0) throw new HalfTranslated(speaker.language, missing);
  return reportOf(
    context,
    { paper, voice, large: size === 'large', title: speaker.say(`pages.paper.${which}.title`) },
    pagesOf(which, context).flatMap((make) => make(context) ?? []),
  );
}

/** Pages as a report, with the standing lines of every sheet. */
function reportOf(
  { speaker, analysis }: PageContext,
  { paper, voice, large, title }: Pick<Report, 'paper' | 'voice' | 'title'> & { large: boolean },
  pages: Report['pages'],
): Report {
  const { timeline, settings } = analysis;
  const { name, code, clinic } = settings.person;
  const sameYear = timeline.from.slice(0, 4) === timeline.to.slice(0, 4);
  const word = (value: string) => ({ q: 'word' as const, value });
  const days = speaker.say('pages.paper.days', {
    from: word(speaker.value({ q: 'date', value: timeline.from }, sameYear ? 'compact' : 'brief')),
    to: word(speaker.value({ q: 'date', value: timeline.to }, 'brief')),
  });
  const whose = code ?? name;
  const who = [name, code].flatMap((one) => (one ? isolated(one) : [])).join(' · ');
  return {
    language: speaker.language,
    direction: speaker.direction,
    paper,
    voice,
    ...(large ? { large } : {}),
    title,
    tab: [...(whose ? [isolated(whose)] : []), days, title].join(' · '),
    header: {
      left: who === '' ? speaker.say('pages.paper.nobody') : who,
      right: [...(clinic ? [isolated(clinic)] : []), title].join(' · '),
    },
    footer: {
      left: speaker.say('pages.paper.footer', {
        days: word(days),
        unit: word(timeline.unit),
        printed: word(speaker.value({ q: 'date', value: settings.today as LocalDate }, 'brief')),
        version: word(analysis.version),
        hash: word(analysis.hash),
      }),
      right: speaker.say('pages.paper.pageOf', { page: word('{page}'), pages: word('{pages}') }),
    },
    pages,
    printed: settings.today,
  };
}

/** One day by itself, for a screen; null for a day outside the period. Days beside it, where there are such. */
export function composeDay(
  analysis: Analysis,
  words: unknown,
  date: LocalDate,
  { voice, paper }: Pick<ComposeOptions, 'voice' | 'paper'>,
): { report: Report; before: LocalDate | null; after: LocalDate | null } | null {
  const context = contextOf(analysis, words, { voice, size: voice, written: null });
  const page = oneDay(context, date);
  if (page === null) return null;
  const { days } = analysis.timeline;
  const at = days.findIndex((day) => day.date === date);
  return {
    report: reportOf(context, { paper, voice, large: false, title: context.speaker.say('pages.oneDay.title') }, [page]),
    before: days[at - 1]?.date ?? null,
    after: days[at + 1]?.date ?? null,
  };
}

/** Every way in which a paper of this voice names a day of the period. */
export function namesOfDays(
  analysis: Analysis,
  words: unknown,
  voice: ComposeOptions['voice'],
): ReadonlyMap<string, LocalDate> {
  const { speaker } = contextOf(analysis, words, { voice, size: voice, written: null });
  return dayNames(
    speaker,
    analysis.timeline.days.map(({ date }) => date),
  );
}

/** What whoever leads a visit chooses from and edits: the topics that were found, the sentences of the draft, and whether there is a sheet of remarks. */
export function visitChoices(
  analysis: Analysis,
  words: unknown,
): { topics: TopicChoice[]; draft: string[]; remarks: boolean } {
  const context = contextOf(analysis, words, { voice: 'clinic', size: 'clinic', written: null });
  return {
    topics: topicChoices(context),
    draft: interpretationSentences(context),
    remarks: remarksApart(context) > 0,
  };
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

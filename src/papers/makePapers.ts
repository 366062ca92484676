import type { Analysis } from '../analyse.ts';
import type { Deflate } from '../bytes/pack.ts';
import { bytesOf } from '../bytes/text.ts';
import { compose, composeMethod } from '../compose.ts';
import type { Report } from '../model/report.ts';
import type { Agreed } from '../model/visits.ts';
import type { HtmlOptions } from '../writers/html/index.ts';
import { analysisJson } from '../writers/json.ts';
import type { Attachment, Cuts, PdfFonts } from '../writers/pdf/index.ts';
import { pageAsText } from '../writers/text.ts';
import { type Result, resultName } from './resultNames.ts';
import { visitOf } from './visitOf.ts';

export interface MadeFile {
  name: string;
  bytes: Uint8Array | string | string[];
  what: Result;
}

/** What is made of an analysis. Both papers always are. */
export interface PapersWanted {
  paper: 'a4' | 'letter';
  grey: boolean;
  large: boolean;
  /** All that a visit does not need, and how each number is made. */
  further: boolean;
  /** What is told as pages also as web pages. */
  html: boolean;
  /** The numbers as a file for programs. */
  numbers: boolean;
  /** The numbers as a file within the clinic report. */
  attach: boolean;
  /** The visit file, which a later visit can be compared with. */
  snapshot: boolean;
  /** What was typed in at the visit, for the papers and the visit file. */
  agreed?: Agreed | null | undefined;
  fhir: boolean;
  /** Single readings in the FHIR bundle too. */
  fhirReadings: boolean;
  /** The clinic's own system of identifiers; without it nothing sent has one. */
  fhirSystem?: string | undefined;
  /** Locks both papers. */
  password?: string | undefined;
}

/** A report as a web page. */
export type WebPages = (report: Report, options: HtmlOptions) => string;

export interface PaperTools {
  /** Of the person's language. */
  words: unknown;
  /** Words known to be whole, where nobody has compared those of the person with them yet. */
  whole?: unknown;
  /** The same object for every person: the writer knows a face it has parsed by its bytes. */
  fonts: PdfFonts;
  version: string;
  /** Packs pages and faces: the engine's own, where it has one. */
  deflate?: Deflate;
  /** The faces, cut and packed before with that. */
  cuts?: Cuts;
  /** What a reader of a paper is told of the numbers attached to it. */
  aboutNumbers: string;
  /** The table of what was set aside, as text. */
  setAside(analysis: Analysis): string;
  /** Opens the page template; asked for only where pages are wanted. */
  openPages(): Promise<WebPages>;
}

/**
 * Everything that is made of one person's analysis, in memory, whichever command asked. The same analysis, wishes and
 * tools, the same bytes, unless a password is given.
 * @throws HalfTranslated as `compose` does, when `whole` words are given.
 */
export async function makePapers(
  analysis: Analysis,
  stem: string,
  wanted: PapersWanted,
  tools: PaperTools,
): Promise<MadeFile[]> {
  const { asPrinted, writePdf } = await import('../writers/pdf/index.ts');
  const { paper, grey, large, password, agreed: written = null } = wanted;
  const { words, whole, version, deflate, cuts } = tools;
  const { timeline, settings } = analysis;
  const nameOf = (what: Result): string => resultName(stem, what, timeline.to);
  const files: MadeFile[] = [];
  const add = (what: Result, bytes: MadeFile['bytes']): void => {
    files.push({ name: nameOf(what), bytes, what });
  };
  const attachment = (): Attachment => ({
    name: nameOf('analysis'),
    bytes: bytesOf(analysisJson(analysis).join('')),
    type: 'application/json',
    description: tools.aboutNumbers,
  });
  const webPage = wanted.html ? await tools.openPages() : null;
  const addPaper = async (which: 'clinic' | 'patient' | 'further', attached: { attachment?: Attachment } = {}) => {
    const kind = which === 'further' ? ({ voice: 'clinic', part: which } as const) : { voice: which };
    const report = compose(analysis, words, { ...kind, paper, large, written, whole });
    const pdf = await writePdf(report, tools.fonts, { version, grey, password, deflate, cuts, ...attached });
    add(which, pdf);
    // The person's page prints on the sides of the paper.
    const shown = webPage && which === 'patient' ? asPrinted(report, tools.fonts, { version, grey }) : report;
    if (webPage) add(`${which}Page`, webPage(shown, { words, grey }));
    return pdf;
  };
  // The paper for the person stays as light as a paper.
  const pdf = await addPaper('clinic', wanted.attach ? { attachment: attachment() } : {});
  // Plain text cannot be locked.
  if (password === undefined)
    add(
      'interpretation',
      pageAsText(compose(analysis, words, { voice: 'clinic', paper, part: 'draft', written }), 'interpretation'),
    );
  await addPaper('patient');
  if (wanted.further) {
    await addPaper('further');
    const { today: printed, person } = settings;
    const method = composeMethod(words, { paper, printed, version, clinic: person.clinic });
    add('method', await writePdf(method, tools.fonts, { version, grey, deflate, cuts }));
  }
  // A year's numbers are 20 MB of text: not made before the papers are done.
  if (wanted.numbers) add('analysis', analysisJson(analysis));
  // Named by the last day it holds, so that a later visit never writes over an earlier one.
  if (wanted.snapshot) {
    const { visitText } = await import('../schemas/visitText.ts');
    add('visit', visitText(visitOf(analysis, nameOf('visit'), written)));
  }
  if (analysis.ledger.setAside > 0) add('setAside', tools.setAside(analysis));
  if (wanted.fhir) {
    const { fhirBundle } = await import('../writers/fhir/index.ts');
    const bundle = fhirBundle(analysis, { pdf, readings: wanted.fhirReadings, system: wanted.fhirSystem });
    add('fhir', `${JSON.stringify(bundle, null, 1)}\n`);
  }
  return files;
}

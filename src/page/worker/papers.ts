import { zip } from '../../bytes/pack.ts';
import { bytesOf } from '../../bytes/text.ts';
import { compose, composeDay, namesOfDays } from '../../compose.ts';
import { version } from '../../index.ts';
import type { Words } from '../../language/index.ts';
import type { Report } from '../../model/report.ts';
import { REMARKS } from '../../pages/index.ts';
import { type MadeFile, makePapers, type PaperTools } from '../../papers/makePapers.ts';
import { setAsideCsv } from '../../papers/setAside.ts';
import type { Teller } from '../../papers/teller.ts';
import { isLocalDate } from '../../time/calendar.ts';
import { type CompiledTemplate, framedHtml, type HtmlOptions, writeHtml } from '../../writers/html/index.ts';
import { asPrinted, lettersWithout, type PdfFonts } from '../../writers/pdf/index.ts';
import type { DayShown, Framed, SavedFile, Sheet, Showing, Wanting } from '../messages.ts';
import type { Current } from './reading.ts';

/** What the page brings along in its file. */
export interface Brought {
  template: CompiledTemplate;
  fonts: PdfFonts;
  /** English, as the command's. */
  tell: Teller;
}

const voiceOf = (sheet: Sheet) =>
  sheet === 'further' ? ({ voice: 'clinic', part: 'further' } as const) : ({ voice: sheet } as const);

/** A paper to look at: the same blocks and words as on paper. */
export function show(
  { sheet, remarks }: Showing,
  { analysis, words, wanted }: Current,
  { template, fonts }: Brought,
): Framed {
  const { paper, large, grey } = wanted;
  const whole = compose(analysis, words, { ...voiceOf(sheet), paper, large, written: wanted.agreed });
  const report = sheet === 'clinic' ? withRemarks(whole, remarks) : whole;
  const shown = sheet === 'patient' ? asPrinted(report, fonts, { version, grey }) : report;
  const days = namesOfDays(analysis, words, report.voice);
  return framed(shown, template, fonts, { words, grey, days });
}

/** The report with its sheet of remarks, without it, or that sheet alone. */
function withRemarks(report: Report, remarks: Showing['remarks']): Report {
  if (remarks === 'with') return report;
  return { ...report, pages: report.pages.filter(({ id }) => (id === REMARKS) === (remarks === 'alone')) };
}

/** A day to look at, in the voice of the paper from which it is opened. */
export function showDay(
  date: string,
  sheet: Sheet,
  { analysis, words, wanted: { paper, grey } }: Current,
  { template, fonts }: Brought,
): DayShown | null {
  const composed = isLocalDate(date) ? composeDay(analysis, words, date, { ...voiceOf(sheet), paper }) : null;
  if (composed === null) return null;
  const { report, before, after } = composed;
  const shown = framed(report, template, fonts, { words, grey });
  return { paper: shown, name: report.pages[0]!.title, before, after };
}

/** A report for a frame, with what of it could not be set on paper. */
export function framed(report: Report, template: CompiledTemplate, fonts: PdfFonts, options: HtmlOptions): Framed {
  const { html, style } = framedHtml(report, template, options);
  return { html, style, direction: report.direction, lacking: lettersWithout(html, fonts) };
}

const TYPES: Record<string, string> = {
  pdf: 'application/pdf',
  html: 'text/html',
  txt: 'text/plain',
  json: 'application/json',
  csv: 'text/csv',
};

/** What was chosen of all that the command makes, under the same names; several as one archive where that is wanted. */
export async function make({ what, ...wanting }: Wanting, current: Current, brought: Brought): Promise<SavedFile[]> {
  const { analysis, words, stem, wanted } = current;
  const { paper, grey, large } = wanted;
  const has = (...names: Wanting['what']): boolean => names.some((name) => what.includes(name));
  const all = await makePapers(
    analysis,
    stem,
    {
      ...{ paper, grey, large, attach: false },
      further: has('further', 'furtherPage', 'method'),
      html: has('clinicPage', 'patientPage', 'furtherPage'),
      numbers: has('analysis'),
      snapshot: has('visit'),
      agreed: wanted.agreed,
      fhir: has('fhir'),
      fhirReadings: wanting.fhirReadings,
    },
    paperTools(brought, words),
  );
  const files = all.filter((file) => what.includes(file.what)).map(savedFile);
  if (!wanting.zip) return files;
  return [{ name: `${stem}.zip`, bytes: zip(files), type: 'application/zip' }];
}

/** What the making of papers needs of the page. */
export const paperTools = ({ fonts, tell, template }: Brought, words: Words): PaperTools => ({
  ...{ words, fonts, version },
  aboutNumbers: tell.say('cli.told.output.analysis'),
  setAside: (one) => setAsideCsv(tell, one),
  openPages: async () => (report, options) => writeHtml(report, template, options),
});

/** A file of ours as it is handed over. */
export const savedFile = ({ name, bytes }: Pick<MadeFile, 'name' | 'bytes'>): SavedFile => ({
  ...{ name, bytes: plain(bytes), type: TYPES[name.split('.').at(-1)!] ?? '' },
});

const plain = (bytes: Uint8Array | string | string[]): Uint8Array => {
  const text = Array.isArray(bytes) ? bytes.join('') : bytes;
  // A copy, as what is handed over is gone here.
  return typeof text === 'string' ? bytesOf(text) : text.slice();
};

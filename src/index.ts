import { type Analysis, analyse as analyseWith, type Refusal } from './analyse.ts';
import { LANGUAGES, type Language, placeOf, type Words } from './language/index.ts';
import type { FhirLeft } from './model/clinic.ts';
import type { Input } from './model/input.ts';
import type { Report } from './model/report.ts';
import type { Settings } from './model/settings.ts';
import { completed, ownWords, version } from './papers/own.ts';
import { refusedSettings } from './papers/wrongSettings.ts';
import type { Bundle, FhirOptions } from './writers/fhir/index.ts';
import type { CompiledTemplate, HtmlOptions } from './writers/html/index.ts';
import type { PdfFonts, PdfInfo } from './writers/pdf/info.ts';

export type { Analysis, FileAccount, Refusal } from './analyse.ts';
export type { Deflate } from './bytes/pack.ts';
export { type ComposeOptions, compose, composeMethod, HalfTranslated, type MethodOptions } from './compose.ts';
export type { Language, Words } from './language/index.ts';
export type { FhirLeft } from './model/clinic.ts';
export type { Input, Issue, Ledger } from './model/input.ts';
export type { Measures } from './model/measures.ts';
export type { Report } from './model/report.ts';
export type { PeriodChoice, Settings } from './model/settings.ts';
export type { Timeline } from './model/timeline.ts';
export { issueText } from './papers/issueText.ts';
export { version } from './papers/own.ts';
export { openWorkbooks } from './readers/containers/workbook.ts';
export type { AnalysisJson } from './schemas/analysis/index.ts';
export type { VisitJson } from './schemas/visit.ts';
export { csvText } from './writers/csv.ts';
export type { Bundle, FhirOptions } from './writers/fhir/index.ts';
export type { CompiledTemplate, HtmlOptions } from './writers/html/index.ts';
export { analysisJson } from './writers/json.ts';
export type { PdfFonts, PdfInfo } from './writers/pdf/info.ts';

/**
 * The analysis that the command makes of the same files and settings, with the same numbers and hash. Words of logbooks
 * and names of medicines come with the program, unless the settings bring others. Settings that do not fit are refused, each place
 * with an issue, as files are that cannot be read safely.
 */
export const analyse = (inputs: readonly Input[], settings: Settings): Analysis | Refusal =>
  refusedSettings(settings) ?? analyseWith(inputs, completed(settings), version);

/**
 * The words of the papers by the name of a language (`en`), of a region (`es-MX`), or of both (`es`, `MX`).
 * @throws RangeError where there are none.
 */
export async function words(name: string = 'en', region?: string): Promise<Words> {
  const place = isLanguage(name) ? placeOf(name, region) : region === undefined ? placeOf(undefined, name) : null;
  if (!place) throw new RangeError(`no words for ${[name, region].join(' ').trim()}`);
  return ownWords(place);
}

const isLanguage = (name: string): name is Language => (LANGUAGES as readonly string[]).includes(name);

// Heavy writers are loaded when their output is asked for.

/** Sets a report on paper, as the command does. */
export async function writePdf(
  report: Report,
  fonts: PdfFonts,
  options: Omit<PdfInfo, 'version'> = {},
): Promise<Uint8Array> {
  const pdf = await import('./writers/pdf/index.ts');
  return pdf.writePdf(report, fonts, { version, ...options });
}

/** A report as one web page; `template` is the content of the package's `page.json`. */
export async function writeHtml(report: Report, template: CompiledTemplate, options: HtmlOptions): Promise<string> {
  const html = await import('./writers/html/index.ts');
  return html.writeHtml(report, template, options);
}

/** An analysis and its paper as a bundle of HL7 FHIR R4. */
export async function fhirBundle(analysis: Analysis, options: FhirOptions): Promise<Bundle> {
  const fhir = await import('./writers/fhir/index.ts');
  return fhir.fhirBundle(analysis, options);
}

/** What such a bundle does not hold, to be said to whoever sends it. */
export async function fhirLeft(analysis: Analysis, options: Omit<FhirOptions, 'pdf'>): Promise<FhirLeft> {
  const fhir = await import('./writers/fhir/index.ts');
  return fhir.fhirLeft(analysis, options);
}

import type { Analysis } from '../analyse.ts';
import { compose } from '../compose.ts';
import { sumsOf } from '../measures/earlier.ts';
import { snapshotText } from '../schemas/snapshot.ts';
import { analysisJson } from '../writers/json.ts';
import type { PdfFonts } from '../writers/pdf/index.ts';
import { pageAsText } from '../writers/text.ts';

export interface MadeFile {
  name: string;
  bytes: Uint8Array | string;
}

/** What is made of an analysis. */
export interface PapersWanted {
  paper: 'a4' | 'letter';
  grey: boolean;
  large: boolean;
  fhir: boolean;
  /** Single readings in the FHIR bundle too. */
  fhirReadings: boolean;
}

export interface PaperTools {
  /** Of the person's language. */
  words: unknown;
  /** The same object for every person: the writer knows a face it has parsed by its bytes. */
  fonts: PdfFonts;
  version: string;
  /** The table of what was set aside, as text. */
  setAside(analysis: Analysis): string;
}

/** Both papers, the numbers, the draft, what the next visit compares with, and what was set aside: in memory. */
export async function makePapers(
  analysis: Analysis,
  stem: string,
  { paper, grey, large, fhir, fhirReadings }: PapersWanted,
  { words, fonts, version, setAside }: PaperTools,
): Promise<MadeFile[]> {
  const { writePdf } = await import('../writers/pdf/index.ts');
  const made: MadeFile[] = [];
  for (const voice of ['clinic', 'patient'] as const) {
    const report = compose(analysis, words, { voice, paper, large });
    const bytes = await writePdf(report, fonts, { version, grey });
    made.push({ name: `${stem}-${voice === 'clinic' ? 'clinic-report' : 'patient-paper'}.pdf`, bytes });
    if (voice === 'clinic') {
      made.push({ name: `${stem}-interpretation.txt`, bytes: pageAsText(report, 'interpretation') });
    }
  }
  made.push({ name: `${stem}-analysis.json`, bytes: analysisJson(analysis) });
  const { timeline, targets, hash, settings } = analysis;
  made.push({
    name: `${stem}-snapshot-${timeline.to}.json`,
    bytes: snapshotText(sumsOf(timeline, targets), { by: version, hash, on: settings.today }),
  });
  if (analysis.ledger.setAside > 0) made.push({ name: `${stem}-set-aside.csv`, bytes: setAside(analysis) });
  if (fhir) {
    const { fhirBundle } = await import('../writers/fhir/index.ts');
    const pdf = made[0]!.bytes as Uint8Array;
    const bundle = fhirBundle(analysis, { pdf, readings: fhirReadings });
    made.push({ name: `${stem}-cgm.fhir.json`, bytes: `${JSON.stringify(bundle, null, 1)}\n` });
  }
  return made;
}

import type { Deflate } from '../bytes/pack.ts';
import { composeMethod } from '../compose.ts';
import type { WorklistContent } from '../pages/worklist.ts';
import type { WebPages } from '../papers/makePapers.ts';
import { METHOD_NAME } from '../papers/resultNames.ts';
import type { PdfFonts } from '../writers/pdf/index.ts';
import { listSpeaker, type Printing, worklistCsv, worklistReport } from './lists.ts';
import { measuresCsv } from './table.ts';

export interface ListTools {
  /** Of the worklist, and of the papers, which may be of another language. */
  words: unknown;
  paperWords: unknown;
  fonts: PdfFonts;
  deflate?: Deflate;
  page: WebPages;
}

/** What is made once for a whole folder: the worklist in its three forms, the method, and the table of measures. */
export async function listFiles(
  content: WorklistContent,
  printing: Printing & { grey: boolean },
  { words, paperWords, fonts, deflate, page }: ListTools,
): Promise<{ name: string; bytes: Uint8Array | string }[]> {
  const { writePdf } = await import('../writers/pdf/index.ts');
  const { paper: size, printed, version, clinic, grey } = printing;
  const speaker = listSpeaker(words);
  const paper = worklistReport(content, speaker, printing, 'paper');
  const screen = worklistReport(content, speaker, printing, 'screen');
  const method = composeMethod(paperWords, { paper: size, printed, version, clinic });
  return [
    { name: 'worklist.pdf', bytes: await writePdf(paper, fonts, { version, grey, deflate }) },
    { name: 'worklist.html', bytes: page(screen, { words, grey }) },
    { name: 'worklist.csv', bytes: worklistCsv(content.lines, speaker) },
    { name: METHOD_NAME, bytes: await writePdf(method, fonts, { version, grey, deflate }) },
    { name: 'measures.csv', bytes: measuresCsv(content.lines) },
  ];
}

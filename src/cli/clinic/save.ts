import { listSpeaker, type Printing, worklistCsv, worklistReport } from '../../clinic/lists.ts';
import { measuresCsv } from '../../clinic/table.ts';
import { composeMethod } from '../../compose.ts';
import type { Place } from '../../language/index.ts';
import type { WorklistContent } from '../../pages/worklist.ts';
import { METHOD_NAME } from '../../papers/resultNames.ts';
import type { Door } from '../door.ts';
import { fonts } from '../home.ts';
import { type Output, saveAll } from '../save.ts';
import { openPages } from '../webPage.ts';
import { paperWords } from '../words.ts';

/** Writes the worklist in its three forms and the table of measures, all or none. Gives their names. */
export async function saveLists(
  out: string,
  content: WorklistContent,
  printing: Printing & { grey: boolean; place?: Place },
  door: Door,
): Promise<string[]> {
  const { writePdf } = await import('../../writers/pdf/index.ts');
  const speaker = listSpeaker(door.words);
  const paper = worklistReport(content, speaker, printing, 'paper');
  const page = await openPages(door);
  const { paper: size, printed, version, clinic, grey, place } = printing;
  const words = place ? paperWords(place) : door.words;
  const method = composeMethod(words, { paper: size, printed, version, clinic });
  const outputs: Output[] = [
    { name: 'worklist.pdf', bytes: await writePdf(paper, fonts(), { version: door.version, grey }) },
    {
      name: 'worklist.html',
      bytes: page(worklistReport(content, speaker, printing, 'screen'), { words: door.words, grey }),
    },
    { name: 'worklist.csv', bytes: worklistCsv(content.lines, speaker) },
    { name: METHOD_NAME, bytes: await writePdf(method, fonts(), { version: door.version, grey }) },
    { name: 'measures.csv', bytes: measuresCsv(content.lines) },
  ];
  saveAll(out, outputs);
  return outputs.map(({ name }) => name);
}
